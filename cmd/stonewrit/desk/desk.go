package desk

import (
	"crypto/rand"
	"encoding/base64"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"sync"
	"time"

	"stonewrit/cmd/stonewrit/desk/form"
	"stonewrit/grading"
	"stonewrit/grading/reading"
)

// Options are what a desk needs of its surroundings.
type Options struct {
	Folder   string          // the working folder
	Tables   *grading.Tables // to judge with
	Office   Office
	Now      func() time.Time
	Language string // of the page; empty for that of the practice or the browser
	// Outer is a bench file above the folder, which counts where the folder has
	// none; it is shown, and not written.
	OuterName string
	Outer     []byte
	// Hosts are the names, with port, under which the desk answers.
	Hosts []string
	// Random is where tokens come from; crypto/rand if nil.
	Random io.Reader
}

// A Desk serves one folder.
type Desk struct {
	o         Options
	root      *os.Root
	voices    map[string]*voice
	stone     *form.Form
	piece     *form.Form
	bench     *form.Form
	index     *index
	pictures  *pictures
	keys      keys
	versions  versions
	benches   benchTexts
	lists     []suggestionList
	listsPath string // with a digest of them
	figures   reading.Figures
	writing   sync.Mutex // one change of a file at a time
}

// keys are the secrets of one start.
type keys struct{ entry, session, form string }

// New opens a folder. It returns an error if the folder cannot be opened or the
// texts of the language are faulty.
func New(o Options) (*Desk, error) {
	if o.Random == nil {
		o.Random = rand.Reader
	}
	d := &Desk{o: o, voices: map[string]*voice{}, stone: form.NewStone(o.Tables.Gems), piece: form.NewPiece(), bench: form.NewBench(), pictures: newPictures()}
	var err error
	if d.figures, err = reading.LoadFigures(); err != nil {
		return nil, err
	}
	d.lists = makeLists(o.Tables.Gems)
	d.listsPath = "/lists?" + digest(fmt.Append(nil, d.lists))
	for _, t := range Tongues() {
		if d.voices[t.Code], err = newVoice(t.Code); err != nil {
			return nil, err
		}
	}
	for _, key := range []*string{&d.keys.entry, &d.keys.session, &d.keys.form} {
		if *key, err = secret(o.Random); err != nil {
			return nil, err
		}
	}
	if d.root, err = os.OpenRoot(o.Folder); err != nil {
		return nil, err
	}
	d.index = newIndex(d)
	return d, nil
}

// Close lets go of the folder.
func (d *Desk) Close() error { return errors.Join(d.root.Close()) }

// EntryPath is the path that a browser is opened with: it carries the token of
// this start.
func (d *Desk) EntryPath() string { return "/enter?token=" + d.keys.entry }

func secret(random io.Reader) (string, error) {
	b := make([]byte, 32)
	if _, err := io.ReadFull(random, b); err != nil {
		return "", fmt.Errorf("no token could be made: %w", err)
	}
	return base64.RawURLEncoding.EncodeToString(b), nil
}

// Handler answers requests.
func (d *Desk) Handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /enter", d.enter)
	mux.Handle("GET /assets/", assetHandler())
	inside := http.NewServeMux()
	inside.HandleFunc("GET /{$}", d.listPage)
	inside.HandleFunc("GET /rows", d.rowsPart)
	inside.HandleFunc("GET /new", d.newPage)
	inside.HandleFunc("POST /new", d.newStone)
	inside.HandleFunc("GET /stone/{file...}", d.stonePage)
	inside.HandleFunc("POST /stone/{file...}", d.saveStone)
	inside.HandleFunc("POST /check/{file...}", d.checkStone)
	inside.HandleFunc("GET /test/{kind}", d.testPart)
	inside.HandleFunc("GET /part/{file...}", d.groupPart)
	inside.HandleFunc("GET /how/{kind}", d.howPart)
	inside.HandleFunc("GET /lists", d.listsPart)
	inside.HandleFunc("GET /language/{code}", d.speak)
	inside.HandleFunc("GET /text/{file...}", d.textPage)
	inside.HandleFunc("POST /text/{file...}", d.saveText)
	inside.HandleFunc("POST /photo/{file...}", d.addPhoto)
	inside.HandleFunc("GET /picture/{file...}", d.picture)
	inside.HandleFunc("GET /draft/{file...}", d.draft)
	inside.HandleFunc("POST /issue/{file...}", d.issue)
	inside.HandleFunc("GET /register", d.registerPage)
	inside.HandleFunc("POST /void", d.void)
	inside.HandleFunc("GET /document/{number}", d.document)
	inside.HandleFunc("GET /verify", d.verifyPage)
	inside.HandleFunc("POST /verify", d.verify)
	inside.HandleFunc("GET /inventory", d.inventory)
	inside.HandleFunc("GET /bench", d.benchPage)
	inside.HandleFunc("POST /bench", d.saveBench)
	inside.HandleFunc("GET /help", d.helpPage)
	mux.Handle("/", d.known(inside))
	return d.guarded(mux)
}
