// The page works without this file for reading, and saves without it too. With
// it, readings are judged while they are entered, tests are added in place, and
// pictures can be dropped.
"use strict";

(() => {
  const form = document.getElementById("stone");
  const texts = document.body.dataset;

  // The list, searched while one types.
  const search = document.querySelector("form[data-rows]");
  if (search) {
    let wanted = 0, timer = 0;
    const rows = document.getElementById("rows");
    const look = async () => {
      const mine = ++wanted;
      const query = new URLSearchParams(new FormData(search));
      const answer = await fetch(search.dataset.rows + "?" + query).catch(() => null);
      if (!answer || !answer.ok || mine !== wanted) return;
      rows.innerHTML = await answer.text();
      history.replaceState(null, "", "/?" + query);
      again();
    };
    const again = () => { // more files have been judged meanwhile
      clearTimeout(timer);
      if (rows.querySelector("[data-more]") && location.search.length > 1) timer = setTimeout(look, 700);
    };
    search.addEventListener("input", () => { clearTimeout(timer); timer = setTimeout(look, 120); });
    again();
  }

  // Words to choose from are the same on every page and not needed to show it.
  if (document.querySelector("[list], [data-list], [data-part]")) {
    const lists = async () => {
      const answer = await fetch(texts.lists).catch(() => null);
      if (answer?.ok) document.body.insertAdjacentHTML("beforeend", await answer.text());
    };
    if (document.readyState === "complete") lists(); else addEventListener("load", () => setTimeout(lists, 30));
  }

  // Folded groups are fetched when they are opened.
  const fetched = new Map();
  const fetchPart = (fold) => {
    const from = fold.dataset.part;
    if (!from) return fetched.get(fold);
    delete fold.dataset.part;
    const work = (async () => {
      const answer = await fetch(from).catch(() => null);
      if (!answer?.ok) { fold.dataset.part = from; return; }
      while (fold.lastElementChild.tagName !== "SUMMARY") fold.lastElementChild.remove();
      fold.insertAdjacentHTML("beforeend", await answer.text());
      if (form) { dress(fold); check(); }
    })();
    fetched.set(fold, work);
    return work;
  };
  addEventListener("toggle", (event) => { if (event.target.open && event.target.dataset.part) fetchPart(event.target); }, true);

  if (!form) return;
  const state = document.getElementById("state");
  const finding = document.getElementById("finding");
  const first = state.textContent;
  if (matchMedia("(max-width: 48rem)").matches) document.querySelector("aside .source")?.removeAttribute("open");
  let busy = false, again = false, edits = 0;
  const times = (window.deskTimes = []);

  // Judging: one request at a time, and one more for what was entered meanwhile.
  const check = async () => {
    if (busy) { again = true; return; }
    busy = true;
    const began = performance.now();
    try {
      const answer = await fetch(form.dataset.check, { method: "POST", body: new URLSearchParams(new FormData(form)) });
      if (!answer.ok) throw new Error(answer.status);
      show(await answer.json());
      times.push(performance.now() - began);
    } catch {
      state.textContent = texts.lost;
    }
    busy = false;
    if (again) { again = false; check(); }
  };

  // What has not changed is left as it is.
  const told = new Map();
  const put = (element, html) => {
    if (!element || told.get(element) === html) return;
    told.set(element, html);
    element.innerHTML = html;
  };
  let marked = [...form.querySelectorAll(".faults:not(:empty)")];
  const show = (found) => {
    const open = new Map([...finding.querySelectorAll("details[data-keep]")].map((d) => [d.dataset.keep, d.open]));
    put(finding, found.finding);
    for (const d of finding.querySelectorAll("details[data-keep]")) d.open ||= open.get(d.dataset.keep) ?? false;
    const scrolled = document.querySelector("#source pre")?.scrollTop;
    put(document.getElementById("source"), found.source);
    if (scrolled) document.querySelector("#source pre").scrollTop = scrolled;
    put(document.getElementById("figures"), found.figures);
    for (const test of form.querySelectorAll(".test")) put(test.querySelector(".verdict"), found.tests[test.dataset.test] ?? "");
    for (const list of marked) {
      list.replaceChildren();
      list.parentElement.classList.remove("has");
    }
    marked = [];
    for (const [mark, faults] of Object.entries(found.fields)) {
      const list = document.getElementById("p-" + mark);
      if (!list) continue;
      list.replaceChildren(...faults.map(fault));
      list.parentElement.classList.toggle("has", faults.some((f) => f.severity === "error"));
      marked.push(list);
    }
    edits = found.edits;
    state.textContent = found.changed ? texts.stale : edits ? texts.busy.replace("%d", edits) : first;
  };

  const fault = (f) => {
    const p = document.createElement("p"), kind = document.createElement("strong");
    p.className = "fault sev-" + f.severity;
    kind.textContent = f.word;
    p.append(kind, " " + f.message);
    if (f.hint) {
      const hint = document.createElement("span");
      hint.className = "hint";
      hint.textContent = f.hint;
      p.append(" ", hint);
    }
    return p;
  };

  if (document.querySelector(".clashes, .test.new")) check(); // what is shown is not what the file says
  form.addEventListener("input", (event) => { if (!event.target.closest(".adder") && event.target.id !== "addkind") check(); });
  form.addEventListener("change", (event) => { if (event.target.type === "checkbox") check(); });

  // Saving: the keys that people know, and a word before entries are lost.
  let leaving = false;
  form.addEventListener("submit", () => { leaving = true; });
  addEventListener("keydown", (event) => {
    if ((event.ctrlKey || event.metaKey) && event.key === "s") {
      event.preventDefault();
      form.requestSubmit(form.querySelector("button.main"));
    }
  });
  addEventListener("beforeunload", (event) => { if (edits && !leaving) event.preventDefault(); });
  form.addEventListener("keydown", (event) => { // Enter in a field judges, it does not send
    if (event.key === "Enter" && event.target.matches("input:not([type=checkbox])")) event.preventDefault();
  });

  // Adding a test in place.
  const kind = document.getElementById("addkind");
  document.getElementById("addtest")?.addEventListener("click", async (event) => {
    event.preventDefault();
    if (!kind.value) { kind.focus(); return; }
    const tests = document.getElementById("tests");
    const at = Number(tests.dataset.count);
    const query = new URLSearchParams({ at, file: form.dataset.file });
    const answer = await fetch("/test/" + encodeURIComponent(kind.value) + "?" + query).catch(() => null);
    if (!answer || !answer.ok) { state.textContent = texts.lost; return; }
    tests.dataset.count = at + 1;
    tests.insertAdjacentHTML("beforeend", await answer.text());
    kind.value = "";
    const added = tests.lastElementChild;
    dress(added);
    (added.querySelector(".field:not(.set) :is(input, select, textarea)") ?? added).focus();
    added.scrollIntoView({ block: "nearest" });
  });

  // Terms of the tables, added line by line.
  const dress = (within) => {
    for (const adder of within.querySelectorAll(".adder")) {
      const text = adder.parentElement.querySelector("textarea"), input = adder.querySelector("input");
      adder.hidden = false;
      const take = () => {
        const term = input.value.trim();
        if (!term) return;
        text.value = (text.value.trim() ? text.value.trimEnd() + "\n" : "") + term;
        input.value = "";
        check();
      };
      input.addEventListener("change", take);
      input.addEventListener("keydown", (event) => { if (event.key === "Enter") take(); });
    }
  };
  dress(form);

  // A link to a field opens what it stands in.
  const lead = async () => {
    const mark = decodeURIComponent(location.hash.slice(1));
    let target = document.getElementById(mark);
    // A field that is not on the page yet is in the nearest group around it.
    for (let above = mark, last = null; !target && above; ) {
      above = above.includes("/") ? above.slice(0, above.lastIndexOf("/")) : "";
      const fold = document.getElementById(above) ?? sectionOf(mark);
      const part = fold && (fold.dataset.part ? fold : fold.querySelector(":scope > details:is(.more, .seldom)[data-part]"));
      if (!part || part === last) continue;
      last = part;
      await fetchPart(part);
      target = document.getElementById(mark);
      above = mark;
    }
    if (!target) return;
    for (let d = target.closest("details"); d; d = d.parentElement.closest("details")) d.open = true;
    (target.matches("input, select, textarea, [tabindex]") ? target : target.querySelector("input, select, textarea") ?? target).focus();
    target.scrollIntoView({ block: "center" });
  };
  // sectionOf is the folded part of the page that a field stands in.
  const sectionOf = (mark) => {
    const key = mark.split("/")[1];
    return [...form.querySelectorAll("details.part[data-part]")].find((d) => d.dataset.keys.split(" ").includes(key));
  };
  addEventListener("hashchange", lead);
  if (location.hash) lead();

  // Pictures, dropped or chosen.
  const photos = document.getElementById("photoform"), drop = photos.querySelector(".drop"), toldPhoto = document.getElementById("photostate");
  const send = async (files) => {
    if (!files.length) return;
    if (edits) { toldPhoto.textContent = texts.busy.replace("%d", edits); return; }
    const body = new FormData(photos);
    body.delete("photo");
    for (const file of files) body.append("photo", file);
    toldPhoto.textContent = "…";
    const answer = await fetch(photos.action, { method: "POST", body, headers: { Accept: "application/json" } }).catch(() => null);
    const said = answer ? await answer.json().catch(() => ({ error: texts.lost })) : { error: texts.lost };
    if (said.error) { toldPhoto.textContent = said.error; return; }
    if (location.search === "?done=photo") location.reload();
    else location.assign(location.pathname + "?done=photo#s-photos");
  };
  addEventListener("dragover", (event) => { event.preventDefault(); drop.classList.add("over"); });
  addEventListener("dragleave", () => drop.classList.remove("over"));
  addEventListener("drop", (event) => { event.preventDefault(); drop.classList.remove("over"); send(event.dataTransfer.files); });
  photos.addEventListener("submit", (event) => { event.preventDefault(); send(photos.querySelector("input[type=file]").files); });
})();
