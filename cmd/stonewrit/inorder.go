package main

import (
	"context"
	"errors"
	"math"
	"runtime"
	"runtime/debug"
	"sync"
)

// inOrder does work for n things on every processor and tells the results in
// their order, whichever was done first. Only a few results wait to be told at a
// time, so that memory does not grow with n. It ends early with the first error
// of tell, and when the run is stopped, which tell may find too (an error of a
// context that was cancelled): what was told by then is done, and goOn says how
// to go on.
func inOrder[T any](ctx context.Context, n int, goOn string, work func(i int) T, tell func(T) error) error {
	type job struct {
		i    int
		done chan T
	}
	defer collectLess()()
	ctx, stop := context.WithCancel(ctx)
	workers := runtime.GOMAXPROCS(0)
	queue, results := make(chan job), make(chan chan T, 8*workers)
	var running sync.WaitGroup
	defer running.Wait()
	defer stop()
	running.Go(func() {
		defer close(results)
		defer close(queue)
		for i := 0; i < n && ctx.Err() == nil; i++ {
			j := job{i, make(chan T, 1)}
			select {
			case results <- j.done:
				queue <- j
			case <-ctx.Done():
			}
		}
	})
	for range workers {
		running.Go(func() {
			for j := range queue {
				j.done <- work(j.i)
			}
		})
	}
	told := 0
	for done := range results {
		if ctx.Err() != nil {
			break
		}
		err := tell(<-done)
		if errors.Is(err, context.Canceled) {
			break
		}
		if err != nil {
			return err
		}
		told++
	}
	if told < n {
		return stopped(told, n, goOn)
	}
	return nil
}

// stopped says how far a run came that was stopped.
func stopped(done, of int, goOn string) error {
	return failing(goOn, "stopped after %d of %d", done, of)
}

// mostMemory is the memory in bytes from which the collector works as often as
// it must to stay below.
const mostMemory = 160 << 20

// collectLess lets the collector of garbage work less often, up to mostMemory:
// a stone leaves a hundred times as much behind as it keeps, and collecting it
// at the usual pace took a fifth of the time. What the user has set is left. The
// function returned puts back what was set before.
func collectLess() (restore func()) {
	if debug.SetMemoryLimit(-1) != math.MaxInt64 {
		return func() {}
	}
	percent := debug.SetGCPercent(400)
	if percent != 100 {
		debug.SetGCPercent(percent)
		return func() {}
	}
	limit := debug.SetMemoryLimit(mostMemory)
	return func() {
		debug.SetGCPercent(percent)
		debug.SetMemoryLimit(limit)
	}
}
