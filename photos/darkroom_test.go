package photos_test

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"stonewrit/photos"
)

// album is a folder of pictures that were there before the test began.
func album(t testing.TB, pictures map[string][]byte) *os.Root {
	t.Helper()
	dir := t.TempDir()
	for name, data := range pictures {
		writeOld(t, filepath.Join(dir, name), data)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	return root
}

// writeOld writes a file with the date of yesterday.
func writeOld(t testing.TB, file string, data []byte) {
	t.Helper()
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	yesterday := time.Now().Add(-24 * time.Hour)
	if err := os.Chtimes(file, yesterday, yesterday); err != nil {
		t.Fatal(err)
	}
}

// plainJPEG is a small picture whose shade is its own.
func plainJPEG(t testing.TB, shade int) []byte {
	m := image.NewGray(image.Rect(0, 0, 64, 48))
	for i := range m.Pix {
		m.Pix[i] = byte(shade + i%7)
	}
	return jpegOf(t, m)
}

// entries lists the files of a folder of kept pictures with their sizes.
func entries(t testing.TB, dir string) map[string]int64 {
	t.Helper()
	found := map[string]int64{}
	err := filepath.WalkDir(dir, func(file string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		info, err := d.Info()
		found[file] = info.Size()
		return err
	})
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		t.Fatal(err)
	}
	return found
}

// sameAsFresh loads from the darkroom and compares with what a fresh decoding
// gives.
func sameAsFresh(t testing.TB, d *photos.Darkroom, root *os.Root, name, why string) {
	t.Helper()
	want, err := photos.Load(root, name, photos.Options{})
	if err != nil {
		t.Fatal(err)
	}
	got, err := d.Load(root, name, photos.Options{})
	switch {
	case err != nil:
		t.Errorf("%s: %v", why, err)
	case !bytes.Equal(got.JPEG, want.JPEG), got.SHA256 != want.SHA256, got.Thumbnail != want.Thumbnail, got.Source != want.Source, !got.Taken.Equal(want.Taken), got.ZoneKnown != want.ZoneKnown:
		t.Errorf("%s: the picture differs from a fresh one: %+v, want %+v", why, got.Info, want.Info)
	}
	info, err := d.Check(root, name, photos.Options{})
	if err != nil || info.SHA256 != want.SHA256 || !info.Taken.Equal(want.Taken) {
		t.Errorf("%s: checking tells %+v, %v", why, info, err)
	}
}

func TestDarkroomGivesTheSame(t *testing.T) {
	pictures := inEveryFormat(t, camera{orientation: 6, taken: "2026:10:14 09:30:00", zone: "+02:00"})
	root, kept := album(t, pictures), filepath.Join(t.TempDir(), "kept")
	d := photos.NewDarkroom(photos.DarkroomOptions{Folder: kept})
	for name := range pictures {
		sameAsFresh(t, d, root, name, "made")
		sameAsFresh(t, d, root, name, "kept")
	}
	before := entries(t, kept)
	if len(before) != 2*len(pictures) {
		t.Errorf("%d entries are kept, want a note and a thumbnail for each of %d pictures", len(before), len(pictures))
	}

	// Another name and date for the same bytes: the thumbnail is kept already.
	writeOld(t, filepath.Join(root.Name(), "copy"), pictures["JPEG"])
	sameAsFresh(t, d, root, "copy", "a copy")
	if n := len(entries(t, kept)) - len(before); n != 1 {
		t.Errorf("a copy of a picture adds %d entries, want its note alone", n)
	}
	if err := os.RemoveAll(kept); err != nil {
		t.Fatal(err)
	}
	sameAsFresh(t, d, root, "JPEG", "after the folder was deleted")
}

func TestDarkroomSeesChanges(t *testing.T) {
	root, kept := album(t, map[string][]byte{"a.jpg": plainJPEG(t, 10)}), t.TempDir()
	d := photos.NewDarkroom(photos.DarkroomOptions{Folder: kept})
	file := filepath.Join(root.Name(), "a.jpg")
	sameAsFresh(t, d, root, "a.jpg", "first")
	writeOld(t, file, plainJPEG(t, 60))
	sameAsFresh(t, d, root, "a.jpg", "another picture of the same name")

	// Two pictures of one size, written within the same tick of the clock.
	one, two := plainJPEG(t, 110), plainJPEG(t, 110)
	two[len(two)-3] ^= 1
	tick := time.Now()
	for i, data := range [][]byte{one, two} {
		if err := errors.Join(os.WriteFile(file, data, 0o600), os.Chtimes(file, tick, tick)); err != nil {
			t.Fatal(err)
		}
		sameAsFresh(t, d, root, "a.jpg", fmt.Sprintf("picture %d of the same size and date", i+1))
	}
}

func TestDarkroomMakesDamagedEntriesAgain(t *testing.T) {
	for name, damage := range map[string]func([]byte) []byte{
		"empty":       func([]byte) []byte { return nil },
		"cut short":   func(b []byte) []byte { return b[:len(b)/2] },
		"one bit":     func(b []byte) []byte { b[len(b)/2] ^= 4; return b },
		"another":     func(b []byte) []byte { return bytes.Repeat([]byte("x"), len(b)) },
		"twice":       func(b []byte) []byte { return append(b, b...) },
		"only a head": func(b []byte) []byte { return b[:32] },
	} {
		root, kept := album(t, map[string][]byte{"a.jpg": plainJPEG(t, 10)}), t.TempDir()
		d := photos.NewDarkroom(photos.DarkroomOptions{Folder: kept})
		sameAsFresh(t, d, root, "a.jpg", name)
		before := entries(t, kept)
		for file := range before {
			data, err := os.ReadFile(file)
			if err == nil {
				err = os.WriteFile(file, damage(data), 0o600)
			}
			if err != nil {
				t.Fatal(err)
			}
		}
		sameAsFresh(t, d, root, "a.jpg", name)
		if after := entries(t, kept); fmt.Sprint(after) != fmt.Sprint(before) {
			t.Errorf("%s: entries are %v, were %v", name, after, before)
		}
	}
}

func TestDarkroomStaysSmall(t *testing.T) {
	const limit = 20_000
	pictures := map[string][]byte{}
	for i := range 60 {
		pictures[fmt.Sprintf("%d.jpg", i)] = plainJPEG(t, i)
	}
	root, kept := album(t, pictures), t.TempDir()
	foreign := filepath.Join(kept, "letter.txt")
	writeOld(t, foreign, make([]byte, 3000))
	d := photos.NewDarkroom(photos.DarkroomOptions{Folder: kept, MaxKept: limit})
	var most int64
	for name := range pictures {
		sameAsFresh(t, d, root, name, "with little room")
		var sum int64
		for file, size := range entries(t, kept) {
			if file != foreign {
				sum += size
			}
		}
		most = max(most, sum)
	}
	if most > limit || most < limit/2 {
		t.Errorf("%d bytes were kept at most, want up to %d", most, limit)
	}
	if _, err := os.Stat(foreign); err != nil {
		t.Error("a file that is no entry was deleted")
	}
}

func TestDarkroomWithoutFolder(t *testing.T) {
	root := album(t, map[string][]byte{"a.jpg": plainJPEG(t, 10)})
	file := filepath.Join(t.TempDir(), "file")
	writeOld(t, file, nil)
	for why, folder := range map[string]string{"none": "", "a file is in the way": file, "below a file": filepath.Join(file, "x")} {
		d := photos.NewDarkroom(photos.DarkroomOptions{Folder: folder})
		sameAsFresh(t, d, root, "a.jpg", why)
		sameAsFresh(t, d, root, "a.jpg", why)
	}
}

func TestDarkroomTellsFaults(t *testing.T) {
	root := album(t, map[string][]byte{"text": []byte("no picture"), "cut.jpg": plainJPEG(t, 10)[:400]})
	d := photos.NewDarkroom(photos.DarkroomOptions{Folder: t.TempDir()})
	for range 2 {
		for _, name := range []string{"text", "cut.jpg", "none", "../a.jpg", ""} {
			_, want := photos.Load(root, name, photos.Options{})
			_, err := d.Load(root, name, photos.Options{})
			if want == nil || err == nil || err.Error() != want.Error() {
				t.Errorf("%q: %v, want %v", name, err, want)
			}
		}
	}
}

func TestDarkroomIsShared(t *testing.T) {
	pictures := map[string][]byte{}
	for i := range 20 {
		pictures[fmt.Sprintf("%d.jpg", i)] = plainJPEG(t, i)
	}
	root := album(t, pictures)
	d := photos.NewDarkroom(photos.DarkroomOptions{Folder: t.TempDir(), MaxKept: 10_000})
	var all sync.WaitGroup
	for range 4 {
		all.Go(func() {
			for name := range pictures {
				sameAsFresh(t, d, root, name, "beside others")
			}
		})
	}
	all.Wait()
}
