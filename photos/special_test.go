//go:build unix

package photos_test

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"stonewrit/photos"
)

func TestPipeIsRefusedWithoutWaiting(t *testing.T) {
	root, dir := folder(t)
	if err := syscall.Mkfifo(filepath.Join(dir, "pipe.png"), 0o644); err != nil {
		t.Skip(err)
	}
	_, err := photos.Load(root, "pipe.png", photos.Options{})
	wantFault(t, err, photos.ErrNotFile, "pipe.png: is a pipe, not a picture file")
}

func TestDeviceIsRefused(t *testing.T) {
	root, err := os.OpenRoot("/dev")
	if err != nil {
		t.Skip(err)
	}
	defer root.Close()
	for _, name := range []string{"zero", "null"} {
		_, err := photos.Load(root, name, photos.Options{})
		wantFault(t, err, photos.ErrNotFile, name+": is a device, not a picture file")
	}
}
