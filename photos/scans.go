package photos

import "bytes"

// jpegScans is what the markers of a JPEG tell about the work it makes.
type jpegScans struct {
	progressive bool
	scans       int
}

// Markers of a JPEG: ITU-T T.81 (1992), table B.1.
const (
	startOfFrameProgressive = 0xc2
	firstRestart            = 0xd0
	startOfImage            = 0xd8
	endOfImage              = 0xd9
	startOfScan             = 0xda
	temporary               = 0x01
)

// scanJPEG walks the markers of data up to the end of the picture, without
// decoding. In coded data a byte ff is always followed by 00 or a restart
// marker (T.81, B.1.1.5), so what else follows it is the next marker.
func scanJPEG(data []byte) (found jpegScans) {
	for len(data) > 1 {
		at := bytes.IndexByte(data, 0xff)
		if at < 0 || at+1 >= len(data) {
			return found
		}
		marker := data[at+1]
		data = data[at+1:]
		switch {
		case marker == 0xff: // padding: look at this byte again
			continue
		case marker == endOfImage:
			return found
		case marker == 0 || marker == temporary || firstRestart <= marker && marker <= startOfImage:
			data = data[1:]
			continue
		case marker == startOfFrameProgressive:
			found.progressive = true
		case marker == startOfScan:
			found.scans++
		}
		if len(data) < 3 {
			return found
		}
		data = data[min(len(data), 1+max(2, int(data[1])<<8|int(data[2]))):]
	}
	return found
}
