package main

import (
	"os"
	"time"

	"github.com/schollz/progressbar/v3"
	"golang.org/x/term"
)

// progress is a bar on standard error, shown only on a terminal and only where
// there is something to wait for. The nil progress shows nothing.
type progress struct{ bar *progressbar.ProgressBar }

// fewest is the number of steps from which a bar is worth its place.
const fewest = 5

// start shows a bar for so many steps.
func (p *program) start(steps int, what string) {
	if steps < fewest || !isTerminal(p.stderr) {
		return
	}
	p.bar = &progress{progressbar.NewOptions(steps,
		progressbar.OptionSetWriter(p.stderr), progressbar.OptionSetDescription(what),
		progressbar.OptionClearOnFinish(), progressbar.OptionThrottle(60*time.Millisecond),
		progressbar.OptionShowCount(), progressbar.OptionSetWidth(24), progressbar.OptionSetPredictTime(true),
	)}
}

// step tells that one more step is done.
func (b *progress) step() {
	if b != nil {
		_ = b.bar.Add(1)
	}
}

// step writes out whole results before the bar comes back, and moves it on.
func (p *program) step() {
	if p.bar != nil {
		_ = p.out.Flush() // a fault of standard output is told at the end of the run
		p.bar.step()
	}
}

// hide takes the bar off the line that is to be written on.
func (b *progress) hide() {
	if b != nil {
		_ = b.bar.Clear()
	}
}

// end takes the bar away.
func (p *program) end() {
	p.bar.hide()
	p.bar = nil
}

// isTerminal reports whether somebody reads or types at the other end.
func isTerminal(stream any) bool {
	f, ok := stream.(*os.File)
	return ok && term.IsTerminal(int(f.Fd()))
}
