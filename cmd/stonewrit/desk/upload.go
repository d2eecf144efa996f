package desk

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"mime/multipart"
	"net/http"
	"os"
	"path"
	"path/filepath"
	"strings"
	"unicode"

	"gopkg.in/yaml.v3"

	"stonewrit/cmd/stonewrit/desk/yamledit"
	"stonewrit/photos"
)

// photoFolder is where pictures go, beside the stone file.
const photoFolder = "photos"

// mostPhoto is how large one picture may be.
const mostPhoto = 32 << 20

// mostPhotos is how many pictures may come at once.
const mostPhotos = 24

// addPhoto takes pictures in: each is decoded before it is written, gets a name
// of its own beside the stone file, and is named in the file.
func (d *Desk) addPhoto(w http.ResponseWriter, r *http.Request) {
	file := r.PathValue("file")
	src, err := d.readStone(file)
	if err != nil {
		d.missing(w, r)
		return
	}
	if digest(src) != r.PostForm.Get("digest") {
		d.photoAnswer(w, r, file, http.StatusConflict, errors.New(d.voice(r).word("refused.changed")))
		return
	}
	status, err := d.takePhotos(r, file, src)
	d.photoAnswer(w, r, file, status, err)
}

func (d *Desk) takePhotos(r *http.Request, file string, src []byte) (int, error) {
	if r.MultipartForm == nil || len(r.MultipartForm.File["photo"]) == 0 {
		return http.StatusBadRequest, errors.New(d.voice(r).t("no picture came with the form"))
	}
	parts := r.MultipartForm.File["photo"]
	if len(parts) > mostPhotos {
		return http.StatusRequestEntityTooLarge, errors.New(d.voice(r).t("more than %d pictures at once", mostPhotos))
	}
	f, err := yamledit.Parse(src)
	if err != nil {
		return http.StatusUnprocessableEntity, err
	}
	var pictures []taken
	for _, part := range parts { // all are looked at before any is written
		p, err := d.takePhoto(part)
		if err != nil {
			return http.StatusUnprocessableEntity, err
		}
		pictures = append(pictures, p)
	}
	var written []string
	for _, p := range pictures {
		name, err := d.storePhoto(file, p)
		if err != nil {
			return http.StatusInternalServerError, errors.Join(err, d.removeAll(written))
		}
		written = append(written, path.Join(path.Dir(file), name))
		entry := yamledit.Map(yamledit.Text("file"), yamledit.Text(name))
		if err := f.Set(yamledit.Path{"photos", photosIn(f)}, entry, nil); err != nil {
			return http.StatusUnprocessableEntity, errors.Join(err, d.removeAll(written))
		}
	}
	if err := d.write(file, digest(src), f.Bytes()); err != nil {
		status := http.StatusInternalServerError
		if isChanged(err) {
			status, err = http.StatusConflict, errors.New(d.voice(r).word("refused.changed"))
		}
		return status, errors.Join(err, d.removeAll(written))
	}
	return http.StatusOK, nil
}

// photosIn counts the pictures that the file names.
func photosIn(f *yamledit.File) int {
	if n := f.Get(yamledit.Path{"photos"}); n != nil && n.Kind == yaml.SequenceNode {
		return len(n.Content)
	}
	return 0
}

// removeAll takes pictures back that no file names.
func (d *Desk) removeAll(names []string) error {
	var errs []error
	for _, name := range names {
		errs = append(errs, d.root.Remove(filepath.FromSlash(name)))
	}
	return errors.Join(errs...)
}

// taken is a picture that was looked at.
type taken struct {
	name   string
	data   []byte
	format photos.Format
}

func (d *Desk) takePhoto(part *multipart.FileHeader) (taken, error) {
	in, err := part.Open()
	if err != nil {
		return taken{}, err
	}
	defer in.Close()
	data, err := io.ReadAll(io.LimitReader(in, mostPhoto+1))
	if err != nil {
		return taken{}, err
	}
	name := path.Base(strings.ReplaceAll(part.Filename, `\`, "/"))
	photo, err := photos.Decode(name, data, photos.Options{MaxBytes: mostPhoto})
	if err != nil {
		return taken{}, err
	}
	return taken{name, data, photo.Format}, nil
}

// storePhoto writes a picture under a name that is free, and returns its path
// from the stone file's folder. The ending is that of what the file holds.
func (d *Desk) storePhoto(file string, p taken) (string, error) {
	dir := filepath.Join(filepath.FromSlash(path.Dir(file)), photoFolder)
	if err := d.root.Mkdir(dir, 0o755); err != nil && !errors.Is(err, fs.ErrExist) {
		return "", err
	}
	base := strings.TrimSuffix(path.Base(file), path.Ext(file)) + "-" + tameName(strings.TrimSuffix(p.name, path.Ext(p.name)))
	for i := 1; i < 1000; i++ {
		name := base + endings()[p.format]
		if i > 1 {
			name = fmt.Sprintf("%s-%d%s", base, i, endings()[p.format])
		}
		f, err := d.root.OpenFile(filepath.Join(dir, name), os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return "", err
		}
		_, err = f.Write(p.data)
		if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
			return "", errors.Join(err, d.root.Remove(filepath.Join(dir, name)))
		}
		return path.Join(photoFolder, name), nil
	}
	return "", fmt.Errorf("no free name is left for %s", base)
}

func endings() map[photos.Format]string {
	return map[photos.Format]string{photos.JPEG: ".jpg", photos.PNG: ".png", photos.TIFF: ".tif", photos.WebP: ".webp"}
}

// tameName keeps letters and digits of a name, and not too many.
func tameName(name string) string {
	parts := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	tame := []rune(strings.Join(parts, "-"))
	if len(tame) == 0 {
		return "photo"
	}
	return string(tame[:min(len(tame), 40)])
}

// photoAnswer tells how it went: to a script in JSON, to a plain form by its
// page.
func (d *Desk) photoAnswer(w http.ResponseWriter, r *http.Request, file string, status int, err error) {
	if r.Header.Get("Accept") != "application/json" {
		if err == nil {
			http.Redirect(w, r, "/stone/"+escaped(file)+"?done=photo#s-photos", http.StatusSeeOther)
			return
		}
		d.show(w, r, status, "refused", map[string]any{"Title": d.voice(r).word("refused.title"), "Text": err.Error()})
		return
	}
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	message := ""
	if err != nil {
		message = err.Error()
	}
	_ = json.NewEncoder(w).Encode(map[string]string{"error": message}) // the browser may have gone
}
