package register

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/uuid"
)

// TestMain lets the test program run again as an issuer, so that two processes
// can share a book and one can be killed.
func TestMain(m *testing.M) {
	if path := os.Getenv("REGISTER_ISSUER"); path != "" {
		if err := hamper(os.Getenv("REGISTER_HAMPER")); err != nil {
			panic(err)
		}
		if err := issuer(path, os.Getenv("REGISTER_FOLDER"), os.Getenv("REGISTER_STONES")); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
		os.Exit(0)
	}
	os.Exit(m.Run())
}

// issuer issues stones PREFIX-1 to PREFIX-COUNT; stones is "PREFIX COUNT".
func issuer(path, folder, stones string) error {
	prefix, last, _ := strings.Cut(stones, " ")
	count, err := strconv.Atoi(last)
	if err != nil {
		return err
	}
	now := time.Date(2026, 10, 14, 9, 30, 0, 0, time.UTC)
	ctx := context.Background()
	b, err := Open(ctx, path, Options{
		Prefix: "HL", Zone: time.UTC, Now: func() time.Time { return now },
		Rand: rand.NewChaCha8(Sum([]byte(fmt.Sprint(stones, os.Getpid())))),
	})
	if err != nil {
		return err
	}
	defer b.Close()
	if _, err := b.Settle(ctx, folder); err != nil {
		return err
	}
	p := &practice{folder: folder}
	for i := range count {
		stone := fmt.Sprintf("%s-%d", prefix, i+1)
		if _, err := b.Issue(ctx, p.request(stone, stone), slowly); err != nil {
			return fmt.Errorf("%s: %w", stone, err)
		}
	}
	return nil
}

// slowly renders in a few milliseconds, so that issuers meet.
func slowly(n Number, id uuid.UUID, at time.Time) ([]byte, error) {
	time.Sleep(3 * time.Millisecond)
	pdf, err := render(n, id, at)
	if os.Getenv("REGISTER_PDF") == "large" {
		pdf = bytes.Repeat(pdf, 20)
	}
	return pdf, err
}

func (p *practice) startIssuer(stones string, environment ...string) (*exec.Cmd, *strings.Builder) {
	p.t.Helper()
	exe, err := os.Executable()
	if err != nil {
		p.t.Fatal(err)
	}
	cmd := exec.Command(exe)
	cmd.Env = append(os.Environ(), "REGISTER_ISSUER="+p.path, "REGISTER_FOLDER="+p.folder, "REGISTER_STONES="+stones)
	cmd.Env = append(cmd.Env, environment...)
	var errors strings.Builder
	cmd.Stderr = &errors
	if err := cmd.Start(); err != nil {
		p.t.Fatal(err)
	}
	return cmd, &errors
}

// wantSeries checks that the book holds each of the first numbers once and a
// stone once, and every PDF whole in its place.
func (p *practice) wantSeries(count int) {
	p.t.Helper()
	entries := p.entries()
	if len(entries) != count {
		p.t.Errorf("%d entries, want %d", len(entries), count)
	}
	stones := map[string]Number{}
	for i, e := range entries {
		if e.Number.Ordinal() != i+1 {
			p.t.Errorf("number %d is %s", i+1, e.Number)
		}
		if twice, ok := stones[e.Stone]; ok {
			p.t.Errorf("%s has %s and %s", e.Stone, twice, e.Number)
		}
		stones[e.Stone] = e.Number
		p.wantFile(e)
	}
	p.wantClean()
}

// TestManyIssuers has four goroutines and two processes issue distinct stones,
// and the goroutines one that is the same for all.
func TestManyIssuers(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		first, firstErrors := p.startIssuer("A 15")
		second, secondErrors := p.startIssuer("B 15")
		var group sync.WaitGroup
		for g := range 4 {
			group.Go(func() {
				for i := range 10 {
					stone := fmt.Sprintf("G%d-%d", g, i)
					if i == 5 {
						stone = "shared"
					}
					if _, err := p.book.Issue(t.Context(), p.request(stone, stone), slowly); err != nil {
						t.Errorf("%s: %v", stone, err)
					}
				}
			})
		}
		group.Wait()
		if err := first.Wait(); err != nil {
			t.Errorf("first process: %v: %s", err, firstErrors)
		}
		if err := second.Wait(); err != nil {
			t.Errorf("second process: %v: %s", err, secondErrors)
		}
		p.wantSeries(15 + 15 + 4*9 + 1)
	})
}
