package desk

import (
	"fmt"
	"net/http"
	"path"
	"path/filepath"
	"strconv"
	"sync"

	"stonewrit/grading/phrase"
	"stonewrit/grading/stone"
	"stonewrit/photos"
)

// pictures remembers what was found of pictures, so that looking at them again
// costs nothing while their files stay as they are.
type pictures struct {
	mu     sync.Mutex
	faults map[pictureState]error
	small  map[pictureState][]byte
	bytes  int
}

// pictureState is one state of a picture file, and the width asked for.
type pictureState struct {
	name  string
	size  int64
	time  int64
	width int
}

func newPictures() *pictures {
	return &pictures{faults: map[pictureState]error{}, small: map[pictureState][]byte{}}
}

// mostSmall is how many bytes of small pictures are kept.
const mostSmall = 64 << 20

// state looks at a picture file without opening it.
func (d *Desk) state(name string, width int) (pictureState, error) {
	info, err := d.root.Stat(filepath.FromSlash(name))
	if err != nil {
		return pictureState{}, err
	}
	return pictureState{name, info.Size(), info.ModTime().UnixNano(), width}, nil
}

// pictureProblems looks at the pictures that a stone names.
func (d *Desk) pictureProblems(j *judged) stone.Problems {
	var list stone.Problems
	for i, p := range j.Stone.Photos {
		name := path.Join(path.Dir(j.File), p.File)
		err := d.checkPicture(name)
		if err != nil {
			list = append(list, j.Stone.Problem(stone.Finding, fmt.Sprintf("photos[%d].file", i), phrase.Say("%s", err.Error()), ""))
		}
	}
	return list
}

// checkPicture reports what is wrong with a picture file.
func (d *Desk) checkPicture(name string) error {
	at, err := d.state(name, 0)
	if err == nil {
		d.pictures.mu.Lock()
		known, ok := d.pictures.faults[at]
		d.pictures.mu.Unlock()
		if ok {
			return known
		}
	}
	_, fault := photos.Check(d.root, name, photos.Options{})
	if err == nil {
		d.pictures.mu.Lock()
		d.pictures.faults[at] = fault
		d.pictures.mu.Unlock()
	}
	return fault
}

// widths are the sizes that pictures are shown in.
func widths() map[string]int { return map[string]int{"row": 96, "page": 640} }

// picture shows a small, clean copy of a picture.
func (d *Desk) picture(w http.ResponseWriter, r *http.Request) {
	name := r.PathValue("file")
	width := widths()[r.URL.Query().Get("for")]
	if width == 0 || !filepath.IsLocal(filepath.FromSlash(name)) {
		d.missing(w, r)
		return
	}
	at, err := d.state(name, width)
	if err != nil {
		d.missing(w, r)
		return
	}
	data, err := d.smallPicture(at)
	if err != nil {
		d.missing(w, r)
		return
	}
	w.Header().Set("Content-Type", "image/jpeg")
	w.Header().Set("Content-Length", strconv.Itoa(len(data)))
	w.Header().Set("Cache-Control", "private, max-age=60")
	_, _ = w.Write(data) // the browser may have gone
}

func (d *Desk) smallPicture(at pictureState) ([]byte, error) {
	p := d.pictures
	p.mu.Lock()
	known, ok := p.small[at]
	p.mu.Unlock()
	if ok {
		return known, nil
	}
	photo, err := photos.Load(d.root, at.name, photos.Options{Box: photos.Size{Width: at.width, Height: at.width}, Quality: 80})
	if err != nil {
		return nil, err
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.bytes += len(photo.JPEG); p.bytes > mostSmall {
		p.small, p.bytes = map[pictureState][]byte{}, len(photo.JPEG)
	}
	p.small[at] = photo.JPEG
	return photo.JPEG, nil
}
