//go:build unix

package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/txtar"
)

// TestStoppedRunsGoOn stops runs in the middle, by the keyboard and by force, and
// runs them again: in the end every document is there, whole and with the number
// that it has without an interruption.
func TestStoppedRunsGoOn(t *testing.T) {
	const stones = 60
	again := map[string][]string{"draft": {"draft", "--changed", "stones"}, "issue": {"issue", "stones"}}
	for _, command := range []string{"draft", "issue"} {
		whole := newShop(t, stones)
		want, _, _ := whole.run(command, "stones")
		for _, signal := range []os.Signal{os.Interrupt, os.Kill} {
			t.Run(command+" "+signal.String(), func(t *testing.T) {
				shop := newShop(t, stones)
				message := shop.stop(signal, stones/4, command, "stones")
				if told := regexp.MustCompile(`^stonewrit: error: stopped after \d+ of 60\nstonewrit: hint: .+\n$`); signal == os.Interrupt && !told.MatchString(message) {
					t.Errorf("stopping it says %q", message)
				}
				for _, pdf := range shop.pdfs() {
					src, err := os.ReadFile(pdf)
					if err != nil || !bytes.HasPrefix(src, []byte("%PDF-")) || !bytes.HasSuffix(src, []byte("%%EOF\n")) {
						t.Errorf("%s is not whole (%v)", pdf, err)
					}
				}
				got, message, _ := shop.run(again[command]...)
				if got := remark.ReplaceAllString(got, ""); got != remark.ReplaceAllString(want, "") {
					t.Errorf("the second run prints\n%s\nwant\n%s", got, want)
				}
				if !strings.Contains(message, fmt.Sprintf("%d %ss of %[1]d files", stones, map[string]string{"draft": "draft", "issue": "document"}[command])) {
					t.Errorf("the second run says %q", message)
				}
				if n := len(shop.pdfs()); n != stones {
					t.Errorf("%d PDFs, want %d", n, stones)
				}
				if command == "issue" {
					if list, _, status := shop.run("register", "audit"); status != 0 {
						t.Errorf("the register has faults: %s", list)
					}
				}
			})
		}
	}
}

// remark is what stands behind a line of draft and issue.
var remark = regexp.MustCompile(`(?m)  \(.*\)$`)

// A shop is a folder with a bench file and many stones.
type shop struct {
	t   *testing.T
	dir string
}

// newShop takes bench file and stone of a script.
func newShop(t *testing.T, stones int) shop {
	t.Helper()
	script, err := txtar.ParseFile(filepath.Join("testdata", "script", "issue.txtar"))
	if err != nil {
		t.Fatal(err)
	}
	s := shop{t, t.TempDir()}
	for _, f := range script.Files {
		switch f.Name {
		case "bench.yaml":
			s.write(f.Name, f.Data)
		case "stones/a.yaml":
			for i := range stones {
				s.write(fmt.Sprintf("stones/%03d.yaml", i), bytes.Replace(f.Data, []byte("RU-1"), fmt.Appendf(nil, "RU-%03d", i), 1))
			}
		}
	}
	return s
}

func (s shop) write(name string, data []byte) {
	s.t.Helper()
	file := filepath.Join(s.dir, filepath.FromSlash(name))
	if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
		s.t.Fatal(err)
	}
	if err := os.WriteFile(file, data, 0o644); err != nil {
		s.t.Fatal(err)
	}
}

func (s shop) command(args ...string) (c *exec.Cmd, stdout, stderr *bytes.Buffer) {
	c = exec.Command("stonewrit", args...)
	c.Dir = s.dir
	stdout, stderr = &bytes.Buffer{}, &bytes.Buffer{}
	c.Stdout, c.Stderr = stdout, stderr
	return c, stdout, stderr
}

// run runs the program to its end.
func (s shop) run(args ...string) (stdout, stderr string, status int) {
	s.t.Helper()
	c, out, message := s.command(args...)
	if err := c.Run(); err != nil && c.ProcessState == nil {
		s.t.Fatal(err)
	}
	if status = c.ProcessState.ExitCode(); status > 1 {
		s.t.Errorf("%v ends with status %d: %s", args, status, message)
	}
	return out.String(), message.String(), status
}

// stop starts the program, stops it once so many PDFs are there, and returns what
// it says.
func (s shop) stop(signal os.Signal, pdfs int, args ...string) string {
	s.t.Helper()
	c, _, message := s.command(args...)
	if err := c.Start(); err != nil {
		s.t.Fatal(err)
	}
	for deadline := time.Now().Add(time.Minute); len(s.pdfs()) < pdfs && time.Now().Before(deadline); {
		time.Sleep(time.Millisecond)
	}
	if err := c.Process.Signal(signal); err != nil {
		s.t.Fatal(err)
	}
	_ = c.Wait()
	if c.ProcessState.Success() || len(s.pdfs()) < pdfs {
		s.t.Fatalf("%v was not stopped in the middle: %v with %d PDFs: %s", args, c.ProcessState, len(s.pdfs()), message)
	}
	return message.String()
}

func (s shop) pdfs() []string {
	drafts, _ := filepath.Glob(filepath.Join(s.dir, "drafts", "*.pdf"))
	issued, _ := filepath.Glob(filepath.Join(s.dir, "issued", "*.pdf"))
	return append(drafts, issued...)
}
