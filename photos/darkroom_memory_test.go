package photos

import (
	"bytes"
	"image"
	"image/jpeg"
	"os"
	"path/filepath"
	"testing"
	"time"
)

// A picture waits until there is memory for it, and one that needs more than all
// of it is decoded alone.
func TestDarkroomWaitsForMemory(t *testing.T) {
	var data bytes.Buffer
	if err := jpeg.Encode(&data, image.NewGray(image.Rect(0, 0, 300, 200)), nil); err != nil {
		t.Fatal(err)
	}
	root, err := os.OpenRoot(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	if err := os.WriteFile(filepath.Join(root.Name(), "a.jpg"), data.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
	d := NewDarkroom(DarkroomOptions{MaxMemory: 1000}) // the picture has 60,000 pixels
	if !d.memory.TryAcquire(1) {
		t.Fatal("no memory at the beginning")
	}
	made := make(chan error, 1)
	go func() {
		_, err := d.Load(root, "a.jpg", Options{})
		made <- err
	}()
	select {
	case <-made:
		t.Error("it did not wait while another was under way")
	case <-time.After(50 * time.Millisecond):
	}
	d.memory.Release(1)
	if err := <-made; err != nil {
		t.Error(err)
	}
	if !d.memory.TryAcquire(1000) {
		t.Error("the memory was not given back")
	}
}
