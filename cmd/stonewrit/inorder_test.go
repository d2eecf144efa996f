package main

import (
	"context"
	"errors"
	"runtime"
	"slices"
	"sync/atomic"
	"testing"
	"time"
)

func TestInOrder(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(8))
	const n = 500
	var under, most atomic.Int64
	work := func(i int) int {
		most.Store(max(most.Load(), under.Add(1)))
		if i%7 == 0 {
			time.Sleep(time.Millisecond) // the later ones overtake it
		}
		return i
	}
	var got []int
	err := inOrder(t.Context(), n, "", work, func(i int) error {
		under.Add(-1)
		got = append(got, i)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	for i, v := range got {
		if i != v {
			t.Fatalf("result %d came at place %d", v, i)
		}
	}
	if len(got) != n {
		t.Errorf("%d results, want %d", len(got), n)
	}
	if most.Load() > 9*8+1 {
		t.Errorf("%d results at a time, want few, whatever their number", most.Load())
	}
}

func TestInOrderEndsEarly(t *testing.T) {
	before := runtime.NumGoroutine()
	for name, tt := range map[string]struct {
		tell func(stop func(), i int) error
		told int
	}{
		"an error of telling": {func(_ func(), i int) error {
			if i == 5 {
				return errors.New("the pipe is closed")
			}
			return nil
		}, 6},
		"the run is stopped": {func(stop func(), i int) error {
			if i == 5 {
				stop()
			}
			return nil
		}, 6},
	} {
		ctx, stop := context.WithCancel(t.Context())
		var told []int
		err := inOrder(ctx, 1000, "", func(i int) int { return i }, func(i int) error {
			told = append(told, i)
			return tt.tell(stop, i)
		})
		stop()
		if err == nil || len(told) != tt.told || !slices.IsSorted(told) {
			t.Errorf("%s: told %d results, error %v; want %d and an error", name, len(told), err, tt.told)
		}
	}
	if after := runtime.NumGoroutine(); after > before {
		t.Errorf("%d goroutines are left behind", after-before)
	}
}
