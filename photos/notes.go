package photos

import (
	"bytes"
	"strings"
	"time"

	"github.com/bep/imagemeta"
)

// notes is the little that is taken from what a camera wrote into the file.
type notes struct {
	orientation int // 1 to 8, see turn
	taken       time.Time
	zoned       bool
}

// readNotes reads orientation and date. Notes that are damaged count as absent:
// the picture itself may be sound.
func readNotes(data []byte, format Format) notes {
	found := notes{orientation: upright}
	var date, offset string
	handle := func(tag imagemeta.TagInfo) error {
		switch tag.Tag {
		case "Orientation":
			found.orientation = orientationOf(tag.Value)
		case "DateTimeOriginal":
			date, _ = tag.Value.(string)
		case "OffsetTimeOriginal":
			offset, _ = tag.Value.(string)
		}
		return nil
	}
	// Its error is dropped on purpose, see above.
	_, _ = safely(func() (imagemeta.DecodeResult, error) {
		return imagemeta.Decode(imagemeta.Options{
			R:               bytes.NewReader(data),
			ImageFormat:     format.codec().notes,
			Sources:         imagemeta.EXIF,
			ShouldHandleTag: wanted,
			HandleTag:       handle,
		})
	})
	found.taken, found.zoned = parseTaken(date, offset)
	return found
}

// wanted keeps everything but three tags unread, the place above all.
func wanted(tag imagemeta.TagInfo) bool {
	switch tag.Tag {
	case "Orientation":
		return tag.Namespace == "IFD0"
	case "DateTimeOriginal", "OffsetTimeOriginal":
		return strings.HasPrefix(tag.Namespace, "IFD0")
	default:
		return false
	}
}

func orientationOf(value any) int {
	if n, ok := value.(uint16); ok && n >= 1 && n <= 8 {
		return int(n)
	}
	return upright
}

// parseTaken reads the forms of EXIF (CIPA DC-008, tags 9003 and 9011 hex):
// "2026:10:14 09:30:00", and "+02:00" for the offset. Blank or impossible dates
// give the zero time, an impossible offset none.
func parseTaken(date, offset string) (taken time.Time, zoned bool) {
	date = strings.Trim(date, " \x00")
	offset = strings.Trim(offset, " \x00")
	if t, err := time.Parse("2006:01:02 15:04:05-07:00", date+offset); err == nil && offset != "" {
		return t, true
	}
	t, err := time.Parse("2006:01:02 15:04:05", date)
	if err != nil {
		return time.Time{}, false
	}
	return t, false
}
