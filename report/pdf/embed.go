package pdf

import (
	"bytes"
	"compress/zlib"
	"crypto/sha256"
	"fmt"
	"image/color"
	"image/jpeg"
	"image/png"
	"slices"
	"strings"

	"stonewrit/report"
)

// pictures are the different pictures of a document in the order of their
// first use. A picture used twice is embedded once.
type pictures struct {
	images []*report.Image
	places map[[sha256.Size]byte]int
}

// name returns the name by which pages call the picture.
func (p *pictures) name(img *report.Image) string {
	key := sha256.Sum256(img.Data)
	at, ok := p.places[key]
	if !ok {
		if p.places == nil {
			p.places = make(map[[sha256.Size]byte]int)
		}
		at = len(p.images)
		p.places[key] = at
		p.images = append(p.images, img)
	}
	return fmt.Sprintf("P%d", at)
}

// resources is the number of the object that fpdf lists all resources in.
const resources = 2

// addPictures embeds the pictures and names them in the resources.
func (f *file) addPictures(p pictures) error {
	if len(p.images) == 0 {
		return nil
	}
	var names strings.Builder
	for _, img := range p.images {
		embed := f.addJPEG
		if isPNG(img.Data) {
			embed = f.addPNG
		}
		n, err := embed(img.Data)
		if err != nil {
			return fmt.Errorf("%w: %v", ErrImage, err)
		}
		fmt.Fprintf(&names, "/%s %d 0 R ", p.name(img), n)
	}
	return f.nameResources("/XObject <<", names.String())
}

// nameResources adds names to a list of the resources.
func (f *file) nameResources(list, names string) error {
	before, after, ok := bytes.Cut(f.objects[resources-1], []byte(list))
	if !ok {
		return fmt.Errorf("the PDF library wrote a file of unknown form: no %s>>", list)
	}
	f.objects[resources-1] = slices.Concat(before, []byte(list+names), after)
	return nil
}

// addJPEG embeds the file as it is (7.4.8).
func (f *file) addJPEG(data []byte) (int, error) {
	cfg, err := jpeg.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return 0, err
	}
	space := "/DeviceRGB"
	switch cfg.ColorModel {
	case color.GrayModel:
		space = "/DeviceGray"
	case color.CMYKModel: // such files hold the inks inverted
		space = "/DeviceCMYK /Decode [1 0 1 0 1 0 1 0]"
	}
	return f.addStream(fmt.Sprintf("/Type /XObject /Subtype /Image /Width %d /Height %d /ColorSpace %s /BitsPerComponent 8 /Filter /DCTDecode",
		cfg.Width, cfg.Height, space), data), nil
}

// addPNG embeds the pixels, and where some are transparent their opacity as a
// soft mask (11.6.5.3).
func (f *file) addPNG(data []byte) (int, error) {
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		return 0, err
	}
	r := img.Bounds()
	colors, opacity := make([]byte, 0, 3*r.Dx()*r.Dy()), make([]byte, 0, r.Dx()*r.Dy())
	opaque := true
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			c := color.NRGBAModel.Convert(img.At(x, y)).(color.NRGBA)
			colors = append(colors, c.R, c.G, c.B)
			opacity = append(opacity, c.A)
			opaque = opaque && c.A == 0xff
		}
	}
	entries := fmt.Sprintf("/Type /XObject /Subtype /Image /Width %d /Height %d /BitsPerComponent 8 /Filter /FlateDecode", r.Dx(), r.Dy())
	mask := ""
	if !opaque {
		mask = fmt.Sprintf(" /SMask %d 0 R", f.addStream(entries+" /ColorSpace /DeviceGray", f.deflate(opacity)))
	}
	return f.addStream(entries+" /ColorSpace /DeviceRGB"+mask, f.deflate(colors)), nil
}

// deflate compresses with a writer of the press: it is large, and takes longer to
// make than a page to compress.
func (f *file) deflate(data []byte) []byte {
	var out bytes.Buffer
	w := f.writers.Get().(*zlib.Writer)
	defer f.writers.Put(w)
	w.Reset(&out)
	w.Write(data) // a bytes.Buffer never fails
	w.Close()
	return out.Bytes()
}

// newDeflater makes the fastest writer: a level that packs more takes twice as
// long for some per cent less.
func newDeflater() any {
	w, _ := zlib.NewWriterLevel(nil, zlib.BestSpeed) // fails for an unknown level only
	return w
}
