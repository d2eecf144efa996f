package photos

import (
	"context"
	"crypto/sha256"
	"encoding/binary"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"time"

	"golang.org/x/sync/semaphore"
)

// A Darkroom makes pictures for many documents. It keeps what it made in a
// folder, so that the same picture is decoded once, and it never has more than
// so many pixels decoded at a time, however many goroutines ask.
//
// What is kept is named by the digest of the picture's bytes, not by its name.
// Nothing kept is ever needed: the folder may be deleted, it cannot grow beyond
// its limit, a damaged entry is made again, and where the folder cannot be
// written to nothing is kept.
type Darkroom struct {
	kept   *shelf // nil where nothing is kept
	memory *semaphore.Weighted
	most   int64 // of memory
}

// DarkroomOptions say where a darkroom keeps its pictures. The zero value keeps
// none.
type DarkroomOptions struct {
	Folder    string
	MaxKept   int64 // bytes that the folder may hold; 256 MB if zero
	MaxMemory int64 // bytes that pictures may take together while they are decoded; 300 MB if zero. A larger one is decoded alone
}

// NewDarkroom makes a darkroom. Nothing is written until a picture is made.
func NewDarkroom(opt DarkroomOptions) *Darkroom {
	if opt.MaxKept <= 0 {
		opt.MaxKept = 256e6
	}
	if opt.MaxMemory <= 0 {
		opt.MaxMemory = 300e6
	}
	d := &Darkroom{memory: semaphore.NewWeighted(opt.MaxMemory), most: opt.MaxMemory}
	if opt.Folder != "" {
		d.kept = &shelf{folder: opt.Folder, limit: opt.MaxKept}
	}
	return d
}

// Load is the function Load with what the darkroom keeps.
func (d *Darkroom) Load(root *os.Root, name string, opt Options) (Photo, error) {
	opt = opt.filled()
	info, data, err := d.info(root, name, opt)
	if err != nil {
		return Photo{}, err
	}
	key := thumbnailKey(info, opt)
	if photo, ok := d.keptPhoto(key, info); ok {
		return photo, nil
	}
	if data == nil {
		if data, err = read(root, name, opt.MaxBytes); err != nil {
			return Photo{}, err
		}
		if info.SHA256 != sha256.Sum256(data) { // changed while we looked
			return d.decode(name, data, opt)
		}
	}
	photo, err := d.develop(name, data, info, opt)
	if err == nil {
		size := binary.BigEndian.AppendUint32(nil, uint32(photo.Thumbnail.Width))
		size = binary.BigEndian.AppendUint32(size, uint32(photo.Thumbnail.Height))
		d.kept.put(key, append(size, photo.JPEG...))
	}
	return photo, err
}

// Check is the function Check with what the darkroom keeps.
func (d *Darkroom) Check(root *os.Root, name string, opt Options) (Info, error) {
	info, _, err := d.info(root, name, opt.filled())
	return info, err
}

// info tells what Check does, and the bytes if they had to be read.
func (d *Darkroom) info(root *os.Root, name string, opt Options) (Info, []byte, error) {
	stat, err := statFile(root, name, opt.MaxBytes)
	if err != nil {
		return Info{}, nil, err
	}
	key, known := fileKey(root, name, stat, opt)
	if known {
		if info, ok := d.keptInfo(key, stat); ok {
			return info, nil, nil
		}
	}
	data, err := read(root, name, opt.MaxBytes)
	if err != nil {
		return Info{}, nil, err
	}
	info, err := inspect(name, data, opt)
	if err == nil && known {
		if src, err := json.Marshal(notedInfo{info, info.orientation, info.memory}); err == nil {
			d.kept.put(key, src)
		}
	}
	return info, data, err
}

// decode is Decode within the memory of the darkroom.
func (d *Darkroom) decode(name string, data []byte, opt Options) (Photo, error) {
	info, err := inspect(name, data, opt)
	if err != nil {
		return Photo{}, err
	}
	return d.develop(name, data, info, opt)
}

func (d *Darkroom) develop(name string, data []byte, info Info, opt Options) (Photo, error) {
	need := min(info.memory, d.most)
	_ = d.memory.Acquire(context.Background(), need) // fails only with its context
	defer d.memory.Release(need)
	return develop(name, data, info, opt)
}

// keptPhoto is a thumbnail that was made before.
func (d *Darkroom) keptPhoto(key string, info Info) (Photo, bool) {
	data, _, ok := d.kept.get(key)
	if !ok || len(data) < 8 {
		return Photo{}, false
	}
	size := Size{int(binary.BigEndian.Uint32(data)), int(binary.BigEndian.Uint32(data[4:]))}
	return Photo{Info: info, Thumbnail: size, JPEG: data[8:]}, true
}

// notedInfo is an Info as it is kept.
type notedInfo struct {
	Info
	Orientation int
	Memory      int64
}

// settled is how much older than its note a file must be for the note to speak
// of it: a clock of files may stand still for as long as two seconds (FAT), and
// within that time a file can change without showing it.
const settled = 2 * time.Second

// keptInfo is what was noted of a file that has not changed since.
func (d *Darkroom) keptInfo(key string, stat fs.FileInfo) (Info, bool) {
	data, written, ok := d.kept.get(key)
	if !ok || written.Sub(stat.ModTime()) < settled {
		return Info{}, false
	}
	var noted notedInfo
	if err := json.Unmarshal(data, &noted); err != nil {
		return Info{}, false
	}
	noted.Info.orientation, noted.Info.memory = noted.Orientation, noted.Memory
	return noted.Info, true
}

// fileKey names the note on a file by its path, size and date, and by the limits
// that it was held against.
func fileKey(root *os.Root, name string, stat fs.FileInfo, opt Options) (string, bool) {
	dir, err := filepath.Abs(root.Name())
	if err != nil {
		return "", false
	}
	return keyOf("file", filepath.Join(dir, filepath.FromSlash(name)), stat.Size(), stat.ModTime().UnixNano(), opt.MaxBytes, opt.MaxPixels, opt.MaxMemory), true
}

func thumbnailKey(info Info, opt Options) string {
	return keyOf("thumbnail", info.SHA256, opt.Box, opt.Quality)
}

// edition is counted on when the same picture comes out otherwise than before.
const edition = 1

// keyBytes is the length of a key.
const keyBytes = 16

func keyOf(parts ...any) string {
	sum := sha256.Sum256(fmt.Appendf(nil, "%d %s %#v", edition, runtime.Version(), parts))
	return fmt.Sprintf("%x", sum[:keyBytes])
}
