package photos

import (
	"image"

	"github.com/disintegration/imaging"
)

// upright is the orientation of a picture stored as it is to be seen.
const upright = 1

// turn brings a picture of the given EXIF orientation upright. Orientation
// says where row 0 and column 0 of the stored picture are to be seen (TIFF 6.0,
// section 8, Orientation; the same tag in EXIF, CIPA DC-008).
func turn(img *image.NRGBA, orientation int) *image.NRGBA {
	switch orientation {
	case 2: // row 0 top, column 0 right
		return imaging.FlipH(img)
	case 3: // bottom, right
		return imaging.Rotate180(img)
	case 4: // bottom, left
		return imaging.FlipV(img)
	case 5: // left, top
		return imaging.Transpose(img)
	case 6: // right, top
		return imaging.Rotate270(img)
	case 7: // right, bottom
		return imaging.Transverse(img)
	case 8: // left, bottom
		return imaging.Rotate90(img)
	default:
		return img
	}
}

// onItsSide tells whether turning swaps width and height.
func onItsSide(orientation int) bool { return orientation >= 5 }

func (s Size) turned(orientation int) Size {
	if onItsSide(orientation) {
		return Size{Width: s.Height, Height: s.Width}
	}
	return s
}
