package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"stonewrit/grading/phrase"
	"time"

	"stonewrit/grading/stone"
	"stonewrit/photos"
)

// keptPhotos is the folder of thumbnails that were made before, in the user's own
// folder for what may be deleted; "" where the system has none.
func keptPhotos() string {
	dir, err := os.UserCacheDir()
	if err != nil {
		return ""
	}
	return filepath.Join(dir, name, "photos")
}

// pictureProblems looks at the pictures that a stone file names, without
// reading their pixels.
func (r *reader) pictureProblems(rec *record) stone.Problems {
	if len(rec.stone.Photos) == 0 {
		return nil
	}
	root, err := os.OpenRoot(filepath.Dir(rec.file))
	if err != nil {
		return stone.Problems{rec.stone.Problem(stone.Finding, "photos", phrase.Say("the folder of the pictures cannot be opened: %s", bare(err)), "")}
	}
	defer root.Close()
	var list stone.Problems
	for i, photo := range rec.stone.Photos {
		at := fmt.Sprintf("photos[%d].file", i)
		info, err := r.photos.Check(root, photo.File, photos.Options{})
		switch {
		case err != nil:
			list = append(list, rec.stone.Problem(stone.Finding, at, phrase.Say("%s", err), phrase.Line(pictureHint(err))))
		case takenLater(rec.stone, info):
			list = append(list, rec.stone.Problem(stone.Warning, at,
				phrase.Say("the camera says that it was taken on %s, after the examination", info.Taken.Format(time.DateOnly)), "is the camera's clock right?"))
		}
	}
	return list
}

// takenLater reports whether a picture says that it was taken after the
// examination.
func takenLater(s *stone.Stone, info photos.Info) bool {
	days := s.Examined.Items
	if info.Taken.IsZero() || len(days) == 0 {
		return false
	}
	y, m, d := info.Taken.Date()
	return time.Date(y, m, d, 0, 0, 0, 0, time.UTC).After(days[len(days)-1].Time)
}

// pictureHint is a next step for a picture that cannot be used.
func pictureHint(err error) string {
	switch {
	case errors.Is(err, photos.ErrMissing):
		return "copy the picture there, or mend the name; it is looked for from the folder of the stone file"
	case errors.Is(err, photos.ErrOutside):
		return "copy the picture into the folder of the stone file"
	case errors.Is(err, photos.ErrFormat):
		return "save it as JPEG, PNG, TIFF or WebP"
	}
	return ""
}
