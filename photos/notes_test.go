package photos_test

import (
	"bytes"
	"encoding/binary"
	"testing"
	"time"

	"stonewrit/photos"
)

func TestTaken(t *testing.T) {
	for _, c := range []struct {
		name, taken, zone string
		want              time.Time
		zoned             bool
	}{
		{"clock and zone", "2026:10:14 09:30:00", "+02:00", time.Date(2026, 10, 14, 7, 30, 0, 0, time.UTC), true},
		{"west of Greenwich", "2026:10:14 23:30:00", "-03:30", time.Date(2026, 10, 15, 3, 0, 0, 0, time.UTC), true},
		{"no zone", "2026:10:14 09:30:00", "", time.Date(2026, 10, 14, 9, 30, 0, 0, time.UTC), false},
		{"blank zone", "2026:10:14 09:30:00", "   :  ", time.Date(2026, 10, 14, 9, 30, 0, 0, time.UTC), false},
		{"clock not set, EXIF's blank form", "    :  :     :  :  ", "", time.Time{}, false},
		{"zeros", "0000:00:00 00:00:00", "", time.Time{}, false},
		{"no such day", "2026:02:30 09:30:00", "", time.Time{}, false},
		{"absent", "", "", time.Time{}, false},
	} {
		for format, data := range inEveryFormat(t, camera{orientation: 1, taken: c.taken, zone: c.zone}) {
			p, err := photos.Decode(format, data, photos.Options{})
			if err != nil {
				t.Errorf("%s, %s: %v", c.name, format, err)
				continue
			}
			if !p.Taken.Equal(c.want) || p.ZoneKnown != c.zoned {
				t.Errorf("%s, %s: taken %v, zone known %v; want %v, %v", c.name, format, p.Taken, p.ZoneKnown, c.want, c.zoned)
			}
		}
	}
}

func TestBothByteOrders(t *testing.T) {
	for _, order := range []binary.AppendByteOrder{binary.BigEndian, binary.LittleEndian} {
		for format, data := range inEveryFormat(t, camera{orientation: 8, taken: "2026:10:14 09:30:00", order: order}) {
			p, err := photos.Decode(format, data, photos.Options{})
			if err != nil || p.Source.Width != 2*quarterHigh || p.Taken.IsZero() {
				t.Errorf("%s, %v: source %v, taken %v, %v", format, order, p.Source, p.Taken, err)
			}
		}
	}
}

// TestNothingOfTheCameraIsCarried walks the markers of what is made: ITU-T T.81
// table B.1. Metadata lives in application segments and comments.
func TestNothingOfTheCameraIsCarried(t *testing.T) {
	for format, data := range inEveryFormat(t, camera{orientation: 3, taken: "2026:10:14 09:30:00", zone: "+02:00"}) {
		if !bytes.Contains(data, []byte(datum)) {
			t.Fatalf("%s: the test's own file lacks the place", format)
		}
		p, err := photos.Decode(format, data, photos.Options{})
		if err != nil {
			t.Errorf("%s: %v", format, err)
			continue
		}
		for _, kept := range []string{datum, "Exif", "2026:10:14"} {
			if bytes.Contains(p.JPEG, []byte(kept)) {
				t.Errorf("%s: the thumbnail holds %q", format, kept)
			}
		}
		for _, marker := range segments(t, p.JPEG) {
			if marker >= 0xe0 && marker <= 0xef || marker == 0xfe {
				t.Errorf("%s: the thumbnail has a segment ff%02x", format, marker)
			}
		}
	}
}

// segments lists the markers of a JPEG up to its first scan.
func segments(t *testing.T, data []byte) (markers []byte) {
	t.Helper()
	for at := 2; at+4 <= len(data); {
		if data[at] != 0xff {
			t.Fatalf("no marker at byte %d", at)
		}
		markers = append(markers, data[at+1])
		if data[at+1] == 0xda {
			return markers
		}
		at += 2 + int(binary.BigEndian.Uint16(data[at+2:]))
	}
	t.Fatal("no scan")
	return nil
}

func TestDamagedNotesDoNotSpoilThePicture(t *testing.T) {
	whole := camera{orientation: 6, taken: "2026:10:14 09:30:00"}.exif()
	for cut := range whole {
		p, err := photos.Decode("cut", jpegWith(jpegOf(t, quarters()), whole[:cut]), photos.Options{})
		if err != nil || p.Thumbnail.Width == 0 {
			t.Fatalf("notes cut to %d bytes: %v", cut, err)
		}
	}
}
