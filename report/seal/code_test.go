package seal_test

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"strings"
	"testing"

	"stonewrit/report/seal"
)

// TestCode has the code read by a reader that others wrote.
func TestCode(t *testing.T) {
	for _, row := range []struct {
		number string
		side   int
	}{{sampleNumber, 33}, {"KESTREL9-2026-999999-72", 37}} {
		rows, err := seal.Code(row.number, seal.Sum([]byte(stoneJSON)))
		if err != nil || len(rows) != row.side {
			t.Fatalf("%s: %d rows, %v; want %d", row.number, len(rows), err, row.side)
		}
		file := t.TempDir() + "/code.png"
		write(t, file, drawn(t, rows))
		want := row.number + " SHA256:" + strings.ToUpper(digest(stoneJSON))
		if got := strings.TrimSpace(tool(t, nil, "zbarimg", "--nodbus", "--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", file)); got != want {
			t.Errorf("the code reads %q, want %q", got, want)
		}
	}
}

func drawn(t *testing.T, rows [][]bool) []byte {
	t.Helper()
	const size, white = 4, 4
	side := (len(rows) + 2*white) * size
	img := image.NewGray(image.Rect(0, 0, side, side))
	for y := range side {
		for x := range side {
			r, c := y/size-white, x/size-white
			dark := r >= 0 && c >= 0 && r < len(rows) && c < len(rows) && rows[r][c]
			if !dark {
				img.SetGray(x, y, color.Gray{Y: 255})
			}
		}
	}
	var out bytes.Buffer
	if err := png.Encode(&out, img); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}
