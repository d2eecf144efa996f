#!/usr/bin/env bash
# How fast is it, and how fast would it be by general means? Run it at the top of
# the project on a machine that does nothing else:
#
#     cmd/stonewrit/testdata/bench/run.sh [--quick] [--stones N] [--out FILE]
#
#     --quick       a small collection (2000 stones): some three minutes
#     --stones N    how many make a large collection; 10000 if left out
#     --out FILE    write the table to FILE as well
#
# Every figure is the median of five runs, if the row does not say otherwise;
# memory is the most that one process held, as the system counts it (GNU time,
# maximum resident set size). What is not installed is passed over with the
# reason. The README beside it says what the rows mean.
set -euo pipefail

large=10000 out=
while [ $# -gt 0 ]; do
  case $1 in
  --quick) large=2000 ;;
  --stones) large=${2:?--stones needs a number}; shift ;;
  --out) out=${2:?--out needs a file}; shift ;;
  *) sed -n '2,/^set /s/^# \{0,1\}//p' "$0"; exit 2 ;;
  esac
  shift
done
small=$((large / 10))
pages=$((small < 100 ? small : 100)) # for one browser kept open
few=10                               # for a call of a program a page

work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
[ -z "$out" ] || exec > >(tee "$out")
cd "$(dirname "$0")/../../../.."
here=./cmd/stonewrit/testdata/bench
export XDG_CACHE_HOME=$work/cache

has() { command -v "$1" >/dev/null 2>&1; }
has /usr/bin/time || { echo "GNU time is not installed: apt-get install time" >&2; exit 2; }

# measured COMMAND... runs a command and prints seconds, processor seconds and
# kilobytes. Exit status 1 means findings, which is no fault here.
measured() {
  local status=0
  /usr/bin/time -q -f '%e %U %S %M' -o "$work/time" "$@" >/dev/null 2>"$work/errors" || status=$?
  [ "$status" -le 1 ] || { tail -5 "$work/errors" >&2; exit 2; }
  awk '{ print $1, $2 + $3, $4 }' "$work/time"
}

# median COMMAND... runs a command five times, each after what $before says, and
# prints the middle time, the processor time of that run and the most memory.
before=
median() {
  for _ in 1 2 3 4 5; do
    eval "$before"
    measured "$@"
  done | sort -n | awk '{ t[NR] = $1; c[NR] = $2; if ($3 > m) m = $3 } END { print t[3], c[3], m }'
}

row() { printf '%-50s %9s %9s %9s %6s  %s\n' "$1" "$2" "$3" "$4" "$5" "${6:-}"; }

# line NAME COUNT SECONDS PROCESSOR KILOBYTES [REMARK]
line() {
  row "$1" "$3" "$4" "$(awk -v n="$2" -v s="$3" 'BEGIN { printf "%.1f", n / s }')" "$(awk -v k="$5" 'BEGIN { printf "%.0f", k / 1024 }')" "${6:-}"
}
ratio() { awk -v a="$1" -v b="$2" 'BEGIN { printf "%.2f", a / b }'; }

echo "building, and inventing a collection" >&2
go build -o "$work/bin/" ./cmd/stonewrit "$here/..."
"$work/bin/collection" -n "$small" "$work/small"
"$work/bin/collection" -n "$large" "$work/large"
"$work/bin/collection" -n "$large" -photos "$work/photos"
"$work/bin/thumbnail" -make "$work/camera.jpg"
"$work/bin/html" -n "$pages" "$work/small" "$work/html"
mapfile -t html < <(ls "$work"/html/*.html)

echo "$(date -u +%F), $(uname -sm), $(awk -F': ' '/model name/ { print $2; exit }' /proc/cpuinfo), $(nproc) processors, $(go version | cut -d' ' -f3), load before $(cut -d' ' -f1 /proc/loadavg)"
echo
row "" seconds processor "a second" MB

read -r s1 c m < <(median "$work/bin/stonewrit" check --json "$work/small")
line "check, $small stones" "$small" "$s1" "$c" "$m"
read -r s c m < <(median "$work/bin/stonewrit" check --json "$work/large")
line "check, $large stones" "$large" "$s" "$c" "$m" "$(awk -v a="$s" -v b="$s1" 'BEGIN { printf "%.2f", a / b / 10 }') times linear"

before='rm -rf "$work/drafts"'
read -r s c m < <(median "$work/bin/stonewrit" draft --out "$work/drafts" "$work/small")
before=
line "draft, $small stones without photos" "$small" "$s" "$c" "$m"
ours=$(awk -v n="$small" -v s="$s" 'BEGIN { print n / s }')
compared() { awk -v a="$ours" -v n="$1" -v s="$2" 'BEGIN { printf "draft is %.0f times as fast", a / (n / s) }'; }
read -r s c m < <(measured "$work/bin/stonewrit" draft --out "$work/all" "$work/large")
line "draft, $large stones without photos (one run)" "$large" "$s" "$c" "$m"
rm -rf "$work/all"

# each COMMAND FILES... runs a line of shell for each file, two at a time: $1 is
# the file, $SLOT is 0 or 1.
each() { median bash -c 'line=$1; shift; printf "%s\n" "$@" | xargs -P 2 -I{} --process-slot-var=SLOT bash -c "$line" each {}' each "$@"; }

browser=$(command -v chromium || command -v chromium-browser || command -v google-chrome || true)
if [ -n "$browser" ]; then
  read -r s c m < <(each "exec '$browser' --headless --no-sandbox --disable-gpu --user-data-dir='$work'/profile-\$SLOT --no-pdf-header-footer --print-to-pdf=\"\$1.pdf\" \"\$1\"" "${html[@]:0:few}")
  line "HTML by Chromium, a call a page, two at a time" "$few" "$s" "$c" "$m" "$(compared "$few" "$s")"
  read -r s c m < <(median "$work/bin/browser" -browser "$browser" "${html[@]}")
  line "HTML by one Chromium kept open, $pages pages" "$pages" "$s" "$c" "$m" "$(compared "$pages" "$s")"
else
  echo "passed over: no Chromium is installed (apt-get install chromium)"
fi
if has weasyprint; then
  read -r s c m < <(each 'exec weasyprint -q "$1" "$1.pdf"' "${html[@]:0:few}")
  line "HTML by weasyprint, a call a page, two at a time" "$few" "$s" "$c" "$m" "$(compared "$few" "$s")"
else
  echo "passed over: weasyprint is not installed (apt-get install weasyprint)"
fi

if has vipsthumbnail; then
  read -r v c m < <(median vipsthumbnail --size 600x600 -o "$work/vips.jpg" "$work/camera.jpg")
  line "12 megapixels to 600 by vipsthumbnail" 1 "$v" "$c" "$m"
else
  v=
  echo "passed over: vipsthumbnail is not installed (apt-get install libvips-tools)"
fi
read -r s c m < <(median "$work/bin/thumbnail" -cold "$work/camera.jpg")
line "the same by photos, cold" 1 "$s" "$c" "$m" "${v:+$(ratio "$s" "$v") times vipsthumbnail}"
s=$("$work/bin/thumbnail" "$work/camera.jpg")
row "the same by photos, warm (median of 101)" "$s" "" "$(awk -v s="$s" 'BEGIN { printf "%.0f", 1 / s }')" ""

read -r s c m < <(measured "$work/bin/stonewrit" inventory --force --out "$work/list.pdf" "$work/photos")
line "inventory, $large with photos, cold (one run)" "$large" "$s" "$c" "$m"
read -r s c m < <(median "$work/bin/stonewrit" inventory --force --out "$work/list.pdf" "$work/photos")
line "inventory, $large with photos, warm" "$large" "$s" "$c" "$m"
read -r s c m < <(measured "$work/bin/stonewrit" inventory --force --csv --out "$work/list.csv" "$work/large")
line "inventory --csv, $large (one run)" "$large" "$s" "$c" "$m"
read -r s c m < <(measured "$work/bin/stonewrit" inventory --force --xlsx --out "$work/list.xlsx" "$work/large")
line "inventory --xlsx, $large (one run)" "$large" "$s" "$c" "$m"

if has pdftotext; then
  words() { for f in "$@"; do pdftotext "$f" - | wc -w; done | awk '{ n += $1 } END { printf "%.0f", n / NR }'; }
  echo
  echo "Words in a document, mean of $few: drafts $(words $(ls "$work"/drafts/*.pdf | head -n "$few"))${browser:+, HTML by Chromium $(words $(printf '%s.pdf ' "${html[@]:0:few}"))}." 2>/dev/null
fi
echo
echo "load after $(cut -d' ' -f1 /proc/loadavg), $((SECONDS / 60)) min $((SECONDS % 60)) s in all"
