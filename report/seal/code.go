package seal

import (
	"encoding/hex"
	"fmt"
	"image/color"
	"strings"

	"github.com/boombuler/barcode/qr"
)

// Code returns the QR code of a document, row by row, true where it is dark,
// without the white margin of four modules that it needs around (ISO/IEC
// 18004, 9.1). It holds the number, and the SHA-256 of the examined data as
// hexadecimal digits; with a prefix of two letters it has 33 modules a side.
func Code(number string, examined Digest) ([][]bool, error) {
	text := codeText(number, examined)
	code, err := qr.Encode(text, qr.M, qr.AlphaNumeric)
	if err != nil {
		return nil, fmt.Errorf("code for %q: %w", text, err)
	}
	side := code.Bounds().Dx()
	rows := make([][]bool, side)
	for y := range rows {
		rows[y] = make([]bool, side)
		for x := range rows[y] {
			rows[y][x] = code.At(x, y) == color.Black
		}
	}
	return rows, nil
}

// codeText uses no small letters: a QR code holds capitals in less room.
func codeText(number string, examined Digest) string {
	return number + " SHA256:" + strings.ToUpper(hex.EncodeToString(examined[:]))
}
