// Collection writes a folder of many stones for the benchmarks: the stone files
// of the demo over and over, each with a reference of its own. Run it at the top
// of the project:
//
//	go run ./cmd/stonewrit/testdata/bench/collection -n 1000 DIR
package main

import (
	"bytes"
	"flag"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"time"

	"golang.org/x/image/draw"
	"golang.org/x/sync/errgroup"
)

func main() {
	n := flag.Int("n", 1000, "number of stones")
	pictures := flag.Bool("photos", false, "a picture of its own for each stone")
	demo := flag.String("demo", filepath.Join("testdata", "demo"), "folder of the demo")
	flag.Parse()
	if flag.NArg() != 1 {
		fmt.Fprintln(os.Stderr, "collection: error: name a folder")
		os.Exit(2)
	}
	if err := write(*demo, flag.Arg(0), *n, *pictures); err != nil {
		fmt.Fprintln(os.Stderr, "collection: error:", err)
		os.Exit(2)
	}
}

var (
	reference = regexp.MustCompile(`(?m)^stone: .*$`)
	photos    = regexp.MustCompile(`(?m)^photos:(?:.*\n)(?:[ \t].*\n?)*`)
	pictured  = regexp.MustCompile(`(?m)^ *(?:logo|signature):`)
)

// write makes a collection of n stones.
func write(demo, dir string, n int, pictures bool) error {
	files, err := filepath.Glob(filepath.Join(demo, "hl-04*.yaml")) // those that are set in no piece
	if err != nil || len(files) == 0 {
		return fmt.Errorf("no stone files in %s: %v", demo, err)
	}
	var stones [][]byte
	var shots []*image.RGBA
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		stones = append(stones, photos.ReplaceAll(src, nil))
		shot, err := small(filepath.Join(demo, "photos", "HL-"+filepath.Base(file)[3:7]+"-face.jpg"))
		if err != nil {
			return err
		}
		shots = append(shots, shot)
	}
	if err := os.MkdirAll(filepath.Join(dir, "photos"), 0o755); err != nil {
		return err
	}
	bench, err := os.ReadFile(filepath.Join(demo, "bench.yaml"))
	if err != nil {
		return err
	}
	if pictured.Match(bench) {
		return fmt.Errorf("the bench of %s has pictures, which are not copied", demo)
	}
	if err := os.WriteFile(filepath.Join(dir, "bench.yaml"), bench, 0o644); err != nil {
		return err
	}
	var all errgroup.Group
	all.SetLimit(runtime.GOMAXPROCS(0))
	for i := range n {
		all.Go(func() error {
			name := fmt.Sprintf("ST-%05d", i)
			src := reference.ReplaceAll(stones[i%len(stones)], []byte("stone: "+name))
			if pictures {
				src = fmt.Appendf(src, "\nphotos: [{file: photos/%s.jpg}]\n", name)
				picture, err := signed(shots[i%len(shots)], i)
				if err == nil {
					err = writeOld(filepath.Join(dir, "photos", name+".jpg"), picture)
				}
				if err != nil {
					return err
				}
			}
			return os.WriteFile(filepath.Join(dir, name+".yaml"), src, 0o644)
		})
	}
	return all.Wait()
}

// small is a picture of the demo as a camera with few pixels would take it.
func small(file string) (*image.RGBA, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	img, err := jpeg.Decode(f)
	if err != nil {
		return nil, err
	}
	out := image.NewRGBA(image.Rect(0, 0, 640, 640*img.Bounds().Dy()/img.Bounds().Dx()))
	draw.ApproxBiLinear.Scale(out, out.Rect, img, img.Bounds(), draw.Src, nil)
	return out, nil
}

// signed is the picture with a pattern of its own in a corner, so that no two
// have the same digest, nor the same thumbnail.
func signed(picture *image.RGBA, i int) ([]byte, error) {
	out := image.NewRGBA(picture.Rect)
	copy(out.Pix, picture.Pix)
	const side = 24
	for bit := range 16 {
		shade := color.Gray{Y: uint8(80 + 120*(i>>bit&1))}
		x, y := bit%4*side, bit/4*side
		draw.Draw(out, image.Rect(x, y, x+side, y+side), image.NewUniform(shade), image.Point{}, draw.Src)
	}
	var b bytes.Buffer
	err := jpeg.Encode(&b, out, &jpeg.Options{Quality: 80})
	return b.Bytes(), err
}

// writeOld writes a file with the date of yesterday, as pictures mostly have.
func writeOld(file string, data []byte) error {
	if err := os.WriteFile(file, data, 0o644); err != nil {
		return err
	}
	yesterday := time.Now().Add(-24 * time.Hour)
	return os.Chtimes(file, yesterday, yesterday)
}
