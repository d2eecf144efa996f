//go:build unix

package desk_test

import (
	"net/http"
	"net/url"
	"os"
	"syscall"
	"testing"
	"time"
)

// spent is the processor time that this program has taken so far, which other
// programs on the machine do not make longer.
func spent(t *testing.T) time.Duration {
	t.Helper()
	var r syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &r); err != nil {
		t.Fatal(err)
	}
	return time.Duration(r.Utime.Nano() + r.Stime.Nano())
}

// TestProcessorTime holds what the program itself takes of the time that a
// person waits: half of the 100 ms to first paint, half of the 50 ms to a
// verdict.
func TestProcessorTime(t *testing.T) {
	if os.Getenv("STONEWRIT_BROWSER_TESTS") == "" {
		t.Skip("a measurement: set STONEWRIT_BROWSER_TESTS=1")
	}
	b := newBench(t)
	form := b.form("/stone/hl-0412.yaml")
	form.Set("v/size/crown_angle", "33.9")
	form.Set("v/tests/#0/readings", "1.762 / 1.770\n1.765 / 1.770\n1.768 / 1.771")
	for _, c := range []struct {
		name string
		do   func() answer
		most time.Duration
	}{
		{"a stone's page", func() answer { return b.get("/stone/hl-0412.yaml") }, 50 * time.Millisecond},
		{"a verdict", func() answer { return b.post("/check/hl-0412.yaml", form) }, 25 * time.Millisecond},
		{"a page of the list", func() answer { return b.get("/?" + url.Values{"sort": {"name"}}.Encode()) }, 25 * time.Millisecond},
	} {
		c.do() // what is made once
		const times = 20
		before := spent(t)
		for range times {
			if got := c.do(); got.status != http.StatusOK {
				t.Fatalf("%s: %d", c.name, got.status)
			}
		}
		each := (spent(t) - before) / times
		t.Logf("%s takes %.1f ms of a processor", c.name, float64(each.Microseconds())/1000)
		if each > c.most {
			t.Errorf("%s takes %v of a processor, %v are allowed", c.name, each, c.most)
		}
	}
}
