package photos

import (
	"bytes"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// statFile looks at the regular file name below root without opening it, since
// opening a pipe waits and opening a device may act.
func statFile(root *os.Root, name string, limit int64) (fs.FileInfo, error) {
	if name == "" {
		return nil, fault(name, ErrMissing, "no file is named")
	}
	local := filepath.FromSlash(name)
	if !filepath.IsLocal(local) {
		return nil, fault(name, ErrOutside, "leads out of the folder; pictures are read only from inside it")
	}
	info, err := root.Stat(local)
	if err != nil {
		return nil, openFault(name, err)
	}
	return info, checkFile(name, info, limit)
}

// read returns the bytes of the regular file name below root.
func read(root *os.Root, name string, limit int64) ([]byte, error) {
	if _, err := statFile(root, name, limit); err != nil {
		return nil, err
	}
	// Should a pipe take the file's place in between, do not wait for it.
	f, err := root.OpenFile(filepath.FromSlash(name), os.O_RDONLY|syscall.O_NONBLOCK, 0)
	if err != nil {
		return nil, openFault(name, err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, openFault(name, err)
	}
	if err := checkFile(name, info, limit); err != nil {
		return nil, err
	}
	return readAll(name, f, info.Size(), limit)
}

func checkFile(name string, info fs.FileInfo, limit int64) error {
	if !info.Mode().IsRegular() {
		return fault(name, ErrNotFile, "is a %s, not a picture file", kindOf(info.Mode()))
	}
	if info.Size() > limit {
		return fault(name, ErrTooBig, "%s, more than the %s accepted", megabytes(info.Size()), megabytes(limit))
	}
	return nil
}

func kindOf(m fs.FileMode) string {
	switch {
	case m.IsDir():
		return "folder"
	case m&fs.ModeDevice != 0:
		return "device"
	case m&fs.ModeNamedPipe != 0:
		return "pipe"
	case m&fs.ModeSocket != 0:
		return "socket"
	default:
		return "special file"
	}
}

// readAll holds to limit even if the file grows while it is read.
func readAll(name string, r io.Reader, size, limit int64) ([]byte, error) {
	buf := bytes.NewBuffer(make([]byte, 0, size+bytes.MinRead))
	n, err := buf.ReadFrom(io.LimitReader(r, limit+1))
	if err != nil {
		return nil, openFault(name, err)
	}
	if n > limit {
		return nil, fault(name, ErrTooBig, "more than the %s accepted", megabytes(limit))
	}
	return buf.Bytes(), nil
}
