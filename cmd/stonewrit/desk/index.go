package desk

import (
	"cmp"
	"context"
	"io/fs"
	"iter"
	"path"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"stonewrit/grading/phrase"
	"stonewrit/grading/quality"
	"stonewrit/grading/stone"
)

// A row is one stone of the work list.
type row struct {
	File, Reference, Kind, Examined, Client, Location, Photo string
	Opinion                                                  phrase.Line
	Species, Growth, Treatment                               string // standings
	Unread, Piece                                            bool
	Holds                                                    []string       // files of the stones of a piece
	Lacks                                                    stone.Problems // what is to be mended before issue, in the order of the file
	Number, NumberState                                      string
	SetIn                                                    string // the piece that holds a stone
	Changed                                                  time.Time
	search                                                   string
	size                                                     int64
	ready, other                                             bool // judged; none of ours
}

// Whose tells whose the stone is and where it lies; the file where it says
// neither.
func (r *row) Whose() string {
	var parts []string
	for _, s := range []string{r.Client, r.Location} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	if len(parts) == 0 {
		return r.File
	}
	return strings.Join(parts, " · ")
}

// index is what is known of the files of the folder. A file is judged when its
// row is asked for, and all are judged in the background, so that the list can
// be searched.
type index struct {
	d *Desk

	mu      sync.Mutex
	rows    map[string]*row
	walked  time.Time
	benches string // state of the bench files and the day
	running bool
}

func newIndex(d *Desk) *index { return &index{d: d, rows: map[string]*row{}} }

// restless is how long a look at the folder holds.
const restless = 500 * time.Millisecond

// refresh looks which files there are and which have changed.
func (x *index) refresh() {
	x.mu.Lock()
	fresh := time.Since(x.walked) < restless
	x.mu.Unlock()
	if fresh {
		return
	}
	found, benches := x.walk()
	var stale []string
	x.mu.Lock()
	defer x.mu.Unlock()
	for name, r := range x.rows {
		now, there := found[name]
		if !there || benches != x.benches || now.size != r.size || !now.Changed.Equal(r.Changed) {
			delete(x.rows, name)
			stale = append(stale, name)
		}
	}
	for name, r := range x.rows { // how a piece stands depends on its stones
		if slices.ContainsFunc(r.Holds, func(file string) bool { return slices.Contains(stale, file) }) {
			delete(x.rows, name)
		}
	}
	for name, r := range found {
		if x.rows[name] == nil {
			x.rows[name] = r
		}
	}
	x.walked, x.benches = time.Now(), benches
}

// walk lists the YAML files of the folder and tells the state of its bench
// files. Hidden files and folders are passed over.
func (x *index) walk() (found map[string]*row, benches string) {
	found = map[string]*row{}
	state := []string{x.d.o.Now().Format(time.DateOnly)}
	_ = fs.WalkDir(x.d.root.FS(), ".", func(name string, entry fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return nil // what cannot be listed cannot be shown
		case strings.HasPrefix(entry.Name(), ".") && name != ".":
			if entry.IsDir() {
				return fs.SkipDir
			}
			return nil
		case entry.IsDir() || !isYAML(name):
			return nil
		}
		info, err := entry.Info()
		if err == nil && info.Mode()&fs.ModeSymlink != 0 {
			info, err = x.d.root.Stat(filepath.FromSlash(name))
		}
		if err != nil || !info.Mode().IsRegular() {
			return nil
		}
		if entry.Name() == benchName {
			state = append(state, name+info.ModTime().String())
			return nil
		}
		found[name] = &row{File: name, size: info.Size(), Changed: info.ModTime()}
		return nil
	})
	return found, strings.Join(state, "\n")
}

// A query says which rows are wanted, and in which order.
type query struct {
	Words, Standing, Kind, Sort string
	Lacking                     bool
	Page                        int
}

// Plain reports whether the rows can be told without judging all files.
func (q query) Plain() bool {
	return q.Words == "" && q.Standing == "" && q.Kind == "" && !q.Lacking
}

// A page of the list.
type listing struct {
	Rows                []*row
	Found, Total, Known int // Known of the Total files have been judged
	Page, Pages         int
}

// pageRows is how many rows a page of the list has.
const pageRows = 50

// find lists the rows of a query, which need not be judged yet; a search finds
// what has been judged so far.
func (x *index) find(q query) listing {
	x.refresh()
	all := x.sorted(q.Sort)
	l := listing{Total: len(all), Page: max(q.Page, 1)}
	if q.Plain() {
		l.Rows, l.Found = all, len(all)
	} else {
		for _, r := range all {
			if r.ready && q.takes(r) {
				l.Rows = append(l.Rows, r)
			}
		}
		l.Found = len(l.Rows)
	}
	l.Pages = max((l.Found+pageRows-1)/pageRows, 1)
	l.Page = min(l.Page, l.Pages)
	from := (l.Page - 1) * pageRows
	l.Rows = l.Rows[from:min(from+pageRows, len(l.Rows))]
	for _, r := range all {
		if r.ready {
			l.Known++
		}
	}
	x.start()
	return l
}

func (q query) takes(r *row) bool {
	for _, w := range strings.Fields(strings.ToLower(q.Words)) {
		if !strings.Contains(r.search, w) {
			return false
		}
	}
	switch {
	case q.Kind != "" && q.Kind != r.Kind, q.Lacking && len(r.Lacks) == 0:
		return false
	case q.Standing == "unread":
		return r.Unread
	case q.Standing == "piece":
		return r.Piece
	}
	return q.Standing == "" || q.Standing == r.Species
}

// sorted lists copies of the rows: the last changed first, or by reference.
func (x *index) sorted(by string) []*row {
	x.mu.Lock()
	list := make([]*row, 0, len(x.rows))
	for _, r := range x.rows {
		if !r.other {
			c := *r
			list = append(list, &c)
		}
	}
	x.mu.Unlock()
	slices.SortFunc(list, func(a, b *row) int {
		if by == "name" {
			return cmp.Compare(a.File, b.File)
		}
		return cmp.Or(b.Changed.Compare(a.Changed), cmp.Compare(a.File, b.File))
	})
	return list
}

// inOrder judges the rows that are not judged yet, and hands them on in their
// order without those that are none of ours.
func (x *index) inOrder(ctx context.Context, rows []*row) iter.Seq[*row] {
	made := make([]chan *row, len(rows))
	for i := range made {
		made[i] = make(chan *row, 1)
	}
	var next atomic.Int64
	for range min(runtime.NumCPU(), len(rows)) {
		go func() {
			for i := int(next.Add(1)) - 1; i < len(rows) && ctx.Err() == nil; i = int(next.Add(1)) - 1 {
				if rows[i].ready {
					made[i] <- rows[i]
				} else {
					made[i] <- x.judge(rows[i])
				}
			}
		}()
	}
	return func(yield func(*row) bool) {
		for i := range rows {
			select {
			case r := <-made[i]:
				if !r.other && !yield(r) {
					return
				}
			case <-ctx.Done():
				return
			}
		}
	}
}

// holder is the row of the piece that holds a stone, as far as pieces have been
// judged; nil if none is known.
func (x *index) holder(file string) *row {
	x.mu.Lock()
	defer x.mu.Unlock()
	for _, r := range x.rows {
		if slices.Contains(r.Holds, file) {
			c := *r
			return &c
		}
	}
	return nil
}

// judge fills in a row and remembers it.
func (x *index) judge(r *row) *row {
	full := x.d.row(*r)
	x.mu.Lock()
	defer x.mu.Unlock()
	if now := x.rows[r.File]; now != nil && now.size == r.size && now.Changed.Equal(r.Changed) {
		x.rows[r.File] = full
	}
	c := *full
	return &c
}

// start judges in the background what is not judged yet.
func (x *index) start() {
	x.mu.Lock()
	defer x.mu.Unlock()
	if x.running {
		return
	}
	x.running = true
	go func() {
		time.Sleep(restless) // what is asked for now comes first
		for _, r := range x.sorted("") {
			if !r.ready {
				x.judge(r)
			}
		}
		x.mu.Lock()
		x.running = false
		x.mu.Unlock()
	}()
}

// row reads and judges a file for the list.
func (d *Desk) row(r row) *row {
	r.ready = true
	src, err := d.readStone(r.File)
	if err != nil {
		r.other = true
		return &r
	}
	j := d.judge(r.File, src, d.benchFor(r.File))
	s := j.Stone
	r.Reference, r.Kind, r.Location, r.Unread = s.Reference, s.Report, s.Location, j.unread()
	if days := s.Examined.Items; len(days) > 0 {
		r.Examined = days[len(days)-1].String()
	}
	if s.Client != nil {
		r.Client = s.Client.Name
	}
	if len(s.Photos) > 0 {
		r.Photo = path.Join(path.Dir(r.File), s.Photos[0].File)
	}
	r.Opinion = opinionOf(s)
	switch {
	case j.sort == stone.SortPiece:
		d.pieceRow(&r, j, src)
	case !r.Unread:
		v := j.Examined.Verdict
		r.Species, r.Growth, r.Treatment = string(v.Species.Standing), string(v.Growth.Standing), string(v.Treatment.Standing)
	}
	for _, p := range j.Problems {
		if p.Severity == stone.Error || p.Severity == stone.Missing || p.Severity == stone.Finding {
			r.Lacks = append(r.Lacks, brief(p))
		}
	}
	stock := ""
	if s.Stock != nil {
		stock = s.Stock.Number
	}
	r.search = strings.ToLower(strings.Join([]string{r.File, r.Reference, r.Kind, r.Opinion.String(), r.Client, r.Location, r.Examined, stock, s.Size.Shape, s.Appearance.Colour}, " "))
	return &r
}

// opinionOf is what the examiner says the stone is, in a few words.
func opinionOf(s *stone.Stone) phrase.Line {
	o := s.Opinion
	name := phrase.Say("%s", phrase.Word(cmp.Or(o.Variety, o.Species)))
	if o.Variety+o.Species == "" {
		name = phrase.Say("%s", phrase.Word(o.Growth))
	} else {
		name = quality.Qualified(o.Growth, name)
	}
	if o.Imitates != "" {
		name = phrase.Say("%s, imitating %s", name, phrase.Word(o.Imitates))
	}
	return name
}

// numbers are the newest numbers of the stones, by reference.
func (d *Desk) numbers(ctx context.Context) map[string]Entry {
	newest := map[string]Entry{}
	entries, err := d.o.Office.Entries(ctx)
	if err != nil {
		return newest // the list is of use without them; the register page tells why
	}
	for _, e := range entries {
		newest[e.Stone] = e
	}
	return newest
}
