// Thumbnail makes a thumbnail of 600 pixels of a picture and prints the median
// time of doing so again, in seconds, when the first is kept. With -cold it makes
// one, with nothing kept, and stops: the time is that of the whole process. With
// -make it writes a picture as a camera of 12 megapixels makes it.
package main

import (
	"flag"
	"fmt"
	"image"
	"image/jpeg"
	"os"
	"path/filepath"
	"slices"
	"time"

	"stonewrit/photos"
)

func main() {
	write := flag.Bool("make", false, "write the picture")
	once := flag.Bool("cold", false, "make one thumbnail")
	flag.Parse()
	do := warm
	switch {
	case *write:
		do = picture
	case *once:
		do = cold
	}
	if err := do(flag.Arg(0)); err != nil {
		fmt.Fprintln(os.Stderr, "thumbnail: error:", err)
		os.Exit(2)
	}
}

// picture is a chessboard of soft colours with the noise of a sensor.
func picture(file string) error {
	m := image.NewYCbCr(image.Rect(0, 0, 4000, 3000), image.YCbCrSubsampleRatio420)
	noise := uint32(1)
	for i := range m.Y {
		noise = noise*1664525 + 1013904223 // from memory: a common linear generator
		x, y := i%m.YStride, i/m.YStride
		m.Y[i] = byte(100 + 60*((x/40+y/40)%2) + int(noise>>28))
	}
	for i := range m.Cb {
		m.Cb[i], m.Cr[i] = byte(100+i%m.CStride/40), byte(120+i/m.CStride/40)
	}
	f, err := os.Create(file)
	if err != nil {
		return err
	}
	if err := jpeg.Encode(f, m, &jpeg.Options{Quality: 92}); err != nil {
		return err
	}
	yesterday := time.Now().Add(-24 * time.Hour)
	if err := os.Chtimes(file, yesterday, yesterday); err != nil {
		return err
	}
	return f.Close()
}

// load makes the thumbnail again and again, with a folder for what is kept, and
// returns how long each time took.
func load(file string, times int) ([]time.Duration, error) {
	root, err := os.OpenRoot(filepath.Dir(file))
	if err != nil {
		return nil, err
	}
	defer root.Close()
	dir, err := os.MkdirTemp("", "thumbnail-*")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(dir)
	room := photos.NewDarkroom(photos.DarkroomOptions{Folder: dir})
	var took []time.Duration
	for range times {
		start := time.Now()
		if _, err := room.Load(root, filepath.Base(file), photos.Options{Box: photos.Size{Width: 600, Height: 600}}); err != nil {
			return nil, err
		}
		took = append(took, time.Since(start))
	}
	return took, nil
}

func cold(file string) error {
	_, err := load(file, 1)
	return err
}

func warm(file string) error {
	took, err := load(file, 102)
	if err != nil {
		return err
	}
	took = took[1:]
	slices.Sort(took)
	fmt.Printf("%.6f\n", took[len(took)/2].Seconds())
	return nil
}
