package desk_test

import (
	"bufio"
	"fmt"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// TestKilledWhileSaving kills a program that saves without a pause, again and
// again: the file is a whole one each time, and the next start can go on.
func TestKilledWhileSaving(t *testing.T) {
	if dir := os.Getenv("DESK_SAVES_IN"); dir != "" {
		saveForEver(t, dir)
		return
	}
	if testing.Short() {
		t.Skip("starts many programs")
	}
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../../testdata/demo")); err != nil {
		t.Fatal(err)
	}
	states := map[string]int{}
	for i := range 8 {
		c := exec.Command(os.Args[0], "-test.run=^TestKilledWhileSaving$")
		c.Env = append(os.Environ(), "DESK_SAVES_IN="+dir)
		out, err := c.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		lines := bufio.NewScanner(out)
		for lines.Scan() && lines.Text() != "saving" {
		}
		time.Sleep(time.Duration(20+13*i) * time.Millisecond)
		if err := c.Process.Kill(); err != nil {
			t.Fatal(err)
		}
		_ = c.Wait() // it was killed
		src, err := os.ReadFile(filepath.Join(dir, "hl-0401.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		text := string(src)
		a, b := strings.Count(text, "A"+strings.Repeat("a", 100000)+"A"), strings.Count(text, "B"+strings.Repeat("b", 100000)+"B")
		if a+b != 1 || !strings.HasPrefix(text, "# A heated blue sapphire") || !strings.HasSuffix(text, "\n") {
			t.Fatalf("round %d: the file is neither the old nor the new one", i)
		}
		states[fmt.Sprint(a)]++
	}
	if len(states) < 2 {
		t.Logf("all rounds were killed in the same state: %v", states)
	}
}

// saveForEver saves one of two long values in turn until it is killed.
func saveForEver(t *testing.T, dir string) {
	b := (&bench{t: t, dir: dir}).open()
	for i := 0; ; i++ {
		v := b.form("/stone/hl-0401.yaml")
		letter := string(rune('a' + i%2))
		v.Set("v/location", strings.ToUpper(letter)+strings.Repeat(letter, 100000)+strings.ToUpper(letter))
		if got := b.post("/stone/hl-0401.yaml", v); got.status != http.StatusSeeOther {
			fmt.Println(got.status)
			return
		}
		if i == 0 {
			fmt.Println("saving")
		}
	}
}
