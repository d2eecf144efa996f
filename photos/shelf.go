package photos

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"time"
)

// A shelf is a folder of entries that may be lost at any time. The nil shelf
// keeps nothing. Faults of the folder are not told: what is not kept is made
// again.
type shelf struct {
	folder string
	limit  int64 // bytes of all entries

	lock    sync.Mutex
	counted bool
	size    int64 // what the folder holds, as far as known
}

// partPrefix begins the name of an entry that is being written.
const partPrefix = ".part-"

func (s *shelf) path(key string) string { return filepath.Join(s.folder, key[:2], key[2:]) }

// get returns an entry and when it was written, if it is there and whole.
func (s *shelf) get(key string) (data []byte, written time.Time, ok bool) {
	if s == nil {
		return nil, written, false
	}
	f, err := os.Open(s.path(key))
	if err != nil {
		return nil, written, false
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil || !info.Mode().IsRegular() || info.Size() > s.limit {
		return nil, written, false
	}
	var buf bytes.Buffer
	buf.Grow(int(info.Size()) + bytes.MinRead)
	if _, err := buf.ReadFrom(f); err != nil || buf.Len() < sha256.Size {
		return nil, written, false
	}
	sum, data := buf.Bytes()[:sha256.Size], buf.Bytes()[sha256.Size:]
	if sha256.Sum256(data) != [sha256.Size]byte(sum) {
		return nil, written, false
	}
	return data, info.ModTime(), true
}

// put keeps an entry: it is there whole or not at all.
func (s *shelf) put(key string, data []byte) {
	if s == nil || int64(len(data)) > s.limit/4 {
		return
	}
	file := s.path(key)
	if os.MkdirAll(filepath.Dir(file), 0o700) != nil {
		return
	}
	f, err := os.CreateTemp(filepath.Dir(file), partPrefix+"*")
	if err != nil {
		return
	}
	sum := sha256.Sum256(data)
	_, err1 := f.Write(append(sum[:], data...))
	if err2 := f.Close(); err1 != nil || err2 != nil || os.Rename(f.Name(), file) != nil {
		os.Remove(f.Name())
		return
	}
	s.grow(int64(len(data) + sha256.Size))
}

// grow notes what was added, and makes room when the shelf is full.
func (s *shelf) grow(n int64) {
	s.lock.Lock()
	defer s.lock.Unlock()
	s.size += n
	if s.counted && s.size <= s.limit {
		return
	}
	s.counted, s.size = true, s.makeRoom()
}

// ourEntry tells an entry by its name, so that nothing else is ever deleted.
func ourEntry(file string) bool {
	const half, whole = 2, 2 * keyBytes
	dir, name := filepath.Base(filepath.Dir(file)), filepath.Base(file)
	return len(dir) == half && (strings.HasPrefix(name, partPrefix) || len(name) == whole-half && strings.Trim(dir+name, "0123456789abcdef") == "")
}

// makeRoom deletes the oldest entries of a shelf that is over its limit, down to
// three quarters of it, and returns what is left. What other runs put there
// counts too.
func (s *shelf) makeRoom() int64 {
	type entry struct {
		file string
		size int64
		time time.Time
	}
	var all []entry
	var size int64
	_ = filepath.WalkDir(s.folder, func(file string, d fs.DirEntry, err error) error {
		if err != nil || !d.Type().IsRegular() || !ourEntry(file) {
			return nil
		}
		if info, err := d.Info(); err == nil {
			all = append(all, entry{file, info.Size(), info.ModTime()})
			size += info.Size()
		}
		return nil
	})
	if size <= s.limit {
		return size
	}
	slices.SortFunc(all, func(a, b entry) int { return cmp.Or(a.time.Compare(b.time), cmp.Compare(a.file, b.file)) })
	for _, e := range all {
		if size <= s.limit/4*3 {
			break
		}
		if os.Remove(e.file) == nil {
			size -= e.size
		}
	}
	return size
}
