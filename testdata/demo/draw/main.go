// Draw makes the pictures of the demo: stones drawn from the geometry of their
// cut, not photographed. Run it at the top of the project:
//
//	go run ./testdata/demo/draw
package main

import (
	"flag"
	"fmt"
	"image/jpeg"
	"os"
	"path/filepath"
	"strings"
)

func main() {
	out := flag.String("out", filepath.Join("testdata", "demo", "photos"), "folder to write to")
	only := flag.String("only", "", "draw the files whose name begins so")
	flag.Parse()
	if err := run(*out, *only); err != nil {
		fmt.Fprintln(os.Stderr, "draw: error:", err)
		os.Exit(2)
	}
}

func run(out, only string) error {
	if err := os.MkdirAll(out, 0o755); err != nil {
		return err
	}
	for _, p := range plates() {
		if !strings.HasPrefix(p.name, only) {
			continue
		}
		if err := p.write(out); err != nil {
			return err
		}
		fmt.Printf("%-14s %.4f mm a pixel  %s\n", p.name, p.scale, p.what)
	}
	return nil
}

func (p plate) write(out string) error {
	m := render(p.things, p.view, p.scale, p.shadow)
	if err := mark(m, p.scale, p.tick); err != nil {
		return err
	}
	f, err := os.Create(filepath.Join(out, p.name+".jpg"))
	if err != nil {
		return err
	}
	if err := jpeg.Encode(f, m, &jpeg.Options{Quality: 88}); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}
