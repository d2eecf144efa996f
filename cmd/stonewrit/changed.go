package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"time"
)

// changes tells which drafts are older than something they are made of: stone
// files, pictures, the bench file with its letterhead, wording and typeface, or
// the program. Several goroutines may ask.
type changes struct {
	program time.Time
	lock    sync.Mutex
	benches map[*benchFile]time.Time
}

// newChanges notes the date of the program. Where that is not to be had, every
// draft counts as old.
func newChanges() *changes {
	c := &changes{program: never(), benches: map[*benchFile]time.Time{}}
	if file, err := os.Executable(); err == nil {
		c.program = dated(file)
	}
	return c
}

// never is a date that no draft reaches.
func never() time.Time { return time.Unix(1<<40, 0) }

// dated is the date of a file; one that cannot be looked at counts as changed.
func dated(file string) time.Time {
	info, err := os.Stat(file)
	if err != nil {
		return never()
	}
	return info.ModTime()
}

// since reports whether anything has changed since the draft was written.
func (c *changes) since(draft string, rec *record) bool {
	written := dated(draft)
	if written.Equal(never()) {
		return true
	}
	newest := later(c.program, c.bench(rec.bench))
	for _, one := range append([]*record{rec}, rec.set...) {
		newest = later(newest, dated(one.file))
		for _, p := range one.stone.Photos {
			newest = later(newest, dated(besideFile(one.file, p.File)))
		}
	}
	return !written.After(newest)
}

func later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}

// bench is the date of the newest file that belongs to a bench.
func (c *changes) bench(b *benchFile) time.Time {
	if b == nil {
		return time.Time{}
	}
	c.lock.Lock()
	defer c.lock.Unlock()
	if known, ok := c.benches[b]; ok {
		return known
	}
	newest := dated(filepath.Join(b.dir, benchName))
	files := append([]string{b.bench.Practice.Logo}, b.bench.Font.Items...)
	for _, e := range b.bench.Examiners {
		files = append(files, e.Signature)
	}
	for _, file := range files {
		if file != "" {
			newest = later(newest, dated(filepath.Join(b.dir, filepath.FromSlash(file))))
		}
	}
	for _, folder := range []string{wordingFolder, fontFolder} {
		newest = later(newest, newestIn(filepath.Join(b.dir, folder)))
	}
	c.benches[b] = newest
	return newest
}

// newestIn is the date of the newest file or folder in a folder, which need not
// be there. The date of a folder tells that a file was taken away.
func newestIn(folder string) time.Time {
	var newest time.Time
	if _, err := os.Stat(folder); err != nil {
		return newest
	}
	_ = filepath.WalkDir(folder, func(file string, _ fs.DirEntry, _ error) error {
		newest = later(newest, dated(file))
		return nil
	})
	return newest
}
