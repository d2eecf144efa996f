package photos_test

import (
	"crypto/sha256"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"stonewrit/photos"
)

// folder holds a picture, a folder with another, and a neighbour outside it.
func folder(t *testing.T) (root *os.Root, dir string) {
	t.Helper()
	above := t.TempDir()
	dir = filepath.Join(above, "stones")
	write(t, filepath.Join(above, "outside.png"), pngOf(t, quarters()))
	write(t, filepath.Join(dir, "face.png"), pngOf(t, quarters()))
	write(t, filepath.Join(dir, "photos", "side.jpg"), jpegOf(t, quarters()))
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	return root, dir
}

func write(t *testing.T, name string, data []byte) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, data, 0o644); err != nil {
		t.Fatal(err)
	}
}

func link(t *testing.T, target, name string) {
	t.Helper()
	if err := os.Symlink(target, name); err != nil {
		t.Skipf("no symbolic links here: %v", err)
	}
}

func TestLoadAndCheck(t *testing.T) {
	root, dir := folder(t)
	link(t, filepath.Join("photos", "side.jpg"), filepath.Join(dir, "inside.jpg"))
	for _, name := range []string{"face.png", "photos/side.jpg", "photos/../face.png", "./face.png", "inside.jpg"} {
		p, err := photos.Load(root, name, photos.Options{})
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		file, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		if p.SHA256 != sha256.Sum256(file) {
			t.Errorf("%s: digest %x is not that of the file", name, p.SHA256)
		}
		info, err := photos.Check(root, name, photos.Options{})
		if err != nil || info != p.Info {
			t.Errorf("%s: checked %+v, loaded %+v, %v", name, info, p.Info, err)
		}
	}
}

func TestOnlyInsideTheFolder(t *testing.T) {
	root, dir := folder(t)
	link(t, filepath.Join("..", "outside.png"), filepath.Join(dir, "link.png"))
	link(t, "..", filepath.Join(dir, "up"))
	link(t, filepath.Join(dir, "face.png"), filepath.Join(dir, "absolute.png"))
	for _, name := range []string{
		"../outside.png", "photos/../../outside.png", filepath.ToSlash(filepath.Join(dir, "face.png")),
		"/etc/passwd", "link.png", "up/outside.png", "absolute.png",
	} {
		t.Run(name, func(t *testing.T) {
			message := name + ": leads out of the folder; pictures are read only from inside it"
			_, err := photos.Load(root, name, photos.Options{})
			wantFault(t, err, photos.ErrOutside, message)
			_, err = photos.Check(root, name, photos.Options{})
			wantFault(t, err, photos.ErrOutside, message)
		})
	}
}

func TestNothingToRead(t *testing.T) {
	root, dir := folder(t)
	link(t, "nowhere.png", filepath.Join(dir, "dangling.png"))
	link(t, "round.png", filepath.Join(dir, "round.png"))
	for _, c := range []struct {
		name    string
		fault   photos.Fault
		message string
	}{
		{"", photos.ErrMissing, `"": no file is named`},
		{"none.png", photos.ErrMissing, "none.png: no such file in the folder"},
		{"dangling.png", photos.ErrMissing, "dangling.png: no such file in the folder"},
		{"none/face.png", photos.ErrMissing, "none/face.png: no such file in the folder"},
		{"photos", photos.ErrNotFile, "photos: is a folder, not a picture file"},
		{".", photos.ErrNotFile, ".: is a folder, not a picture file"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := photos.Load(root, c.name, photos.Options{})
			wantFault(t, err, c.fault, c.message)
		})
	}
	for _, name := range []string{"round.png", "face.png/x", "a\x00b.png"} { // the system words these
		if _, err := photos.Load(root, name, photos.Options{}); !errors.Is(err, photos.ErrUnreadable) {
			t.Errorf("%q: %v, want %v", name, err, photos.ErrUnreadable)
		}
	}
}

func TestFileOverTheLimitIsNotRead(t *testing.T) {
	root, dir := folder(t)
	if err := os.Truncate(filepath.Join(dir, "face.png"), 1<<40); err != nil { // a sparse terabyte
		t.Skip(err)
	}
	_, err := photos.Load(root, "face.png", photos.Options{})
	wantFault(t, err, photos.ErrTooBig, "face.png: 1099511.6 MB, more than the 128 MB accepted")
}
