package register

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"testing"
	"time"
)

// longVariable names the environment variable that has the long tests run.
const longVariable = "STONEWRIT_LONG_TESTS"

// TestKilledIssuers kills four processes that issue distinct stones on one
// register, one after the other at random instants, again and again. What
// they leave must settle, and in the end every stone be issued once.
func TestKilledIssuers(t *testing.T) {
	rounds, stones := 4, 20
	if os.Getenv(longVariable) != "" {
		rounds, stones = 75, 300
	}
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		var tally leftovers
		for range rounds {
			p.killFour(stones)
			tally.add(p.settleAll())
			p.wantClean()
		}
		t.Logf("%d kills: %d left a number committed without its PDF in place, %d a PDF aside without its number, %d the register in the middle of a write; %d stones were issued by then",
			4*rounds, tally.pending, tally.staged, tally.journals, len(p.entries()))
		for i := range 4 {
			cmd, errors := p.startIssuer(fmt.Sprintf("K%d %d", i, stones))
			if err := cmd.Wait(); err != nil {
				t.Fatalf("%v: %s", err, errors)
			}
		}
		p.wantSeries(4 * stones)
	})
}

// killFour starts four issuers and kills each at an instant of its own.
func (p *practice) killFour(stones int) {
	p.t.Helper()
	var running []*exec.Cmd
	for i := range 4 {
		cmd, _ := p.startIssuer(fmt.Sprintf("K%d %d", i, stones))
		running = append(running, cmd)
	}
	time.Sleep(time.Duration(20+rand.IntN(60)) * time.Millisecond)
	for _, i := range rand.Perm(len(running)) {
		time.Sleep(time.Duration(rand.IntN(30_000)) * time.Microsecond)
		running[i].Process.Kill()
	}
	for _, cmd := range running {
		cmd.Wait()
	}
}

// leftovers counts what kills left.
type leftovers struct{ pending, staged, journals int }

func (l *leftovers) add(m leftovers) {
	l.pending, l.staged, l.journals = l.pending+m.pending, l.staged+m.staged, l.journals+m.journals
}

// settleAll counts and settles what was left, as the next run would.
func (p *practice) settleAll() leftovers {
	p.t.Helper()
	var found leftovers
	aside := map[string]bool{}
	for _, name := range p.names() {
		aside[name] = isPart(name)
	}
	if info, err := os.Stat(p.path + "-journal"); err == nil && info.Size() > 0 {
		found.journals = 1
	}
	settled, err := p.book.Settle(p.t.Context(), p.folder)
	if err != nil {
		p.t.Fatal(err)
	}
	for _, s := range settled {
		if s.Err != nil {
			p.t.Errorf("%s: %v", s.Entry.Number, s.Err)
		}
		delete(aside, partName(s.Entry.File))
	}
	found.pending = len(settled)
	for _, part := range aside {
		if part {
			found.staged++
		}
	}
	return found
}
