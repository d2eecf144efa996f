package register

import (
	"bytes"
	"errors"
	"fmt"
	"net"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/google/uuid"
)

// TestTwoMachines has two machines issue into folders of their own on one
// register, one of them cut off between commit and name.
func TestTwoMachines(t *testing.T) {
	here := serverPractice(t)
	here.book = here.open(Options{Machine: "here"})
	there := *here
	there.folder = filepath.Join(t.TempDir(), "issued")
	there.book = there.open(Options{Machine: "there"})

	cut := there.issue("T-1", "x")
	there.unconfirmed(cut, place{"there", there.folder})
	if err := os.Rename(there.folder, there.folder+" of another machine"); err != nil { // as seen from here
		t.Fatal(err)
	}
	if settled, err := here.book.Settle(t.Context(), here.folder); err != nil || len(settled) > 0 {
		t.Errorf("what the other machine left: settled %v, %v; want it left alone", settled, err)
	}
	if n := here.issue("H-1", "x").Entry.Number.Ordinal(); n != 2 {
		t.Errorf("the next number is %d, want 2: one series for both", n)
	}
	if e, err := here.book.Show(t.Context(), cut.Entry.Number); err != nil || e.State != Reserved {
		t.Errorf("the other machine's number is %v, %v, want reserved", e.State, err)
	}
	if err := os.Rename(there.folder+" of another machine", there.folder); err != nil {
		t.Fatal(err)
	}
	settled, err := there.book.Settle(t.Context(), there.folder)
	if err != nil || len(settled) != 1 || settled[0].Err != nil {
		t.Errorf("the machine itself: settled %v, %v", settled, err)
	}
	there.wantFile(cut.Entry)
	if found := here.audit(); len(found) != 1 || !strings.Contains(found[0], cut.Entry.File) || !strings.Contains(found[0], "missing") {
		t.Errorf("audited here: %q, want that the PDF issued there is not here", found)
	}
	if _, err := here.book.Restore(t.Context(), cut.Entry.Number, here.folder); err != nil {
		t.Errorf("restoring it here: %v", err)
	}
	here.wantClean()
}

// unconfirmed makes an entry pending again, as if the run had ended before it
// struck that out.
func (p *practice) unconfirmed(done Issuance, at place) {
	p.t.Helper()
	err := p.book.store.write(p.t.Context(), func(w *tx) error { return w.insertPending(done.Entry.Event, at) })
	if err != nil {
		p.t.Fatal(err)
	}
}

// TestSharedFolder settles what another machine left where both have the folder.
func TestSharedFolder(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		done := p.issue("S-1", "x")
		p.unconfirmed(done, place{"another", p.folder})
		settled, err := p.book.Settle(t.Context(), p.folder)
		if err != nil || len(settled) != 1 || settled[0].Err != nil {
			t.Errorf("settled %v, %v", settled, err)
		}
		p.wantClean()
	})
}

// TestConnectionLost cuts the line to the server at chosen moments of an issue.
func TestConnectionLost(t *testing.T) {
	for _, row := range []struct {
		name  string
		cut   func(*line)   // before issuing
		mid   func(l *line) // while the document is made
		want  error         // nil: as if nothing had happened
		taken int           // numbers taken in the end
		then  func(l *line) // afterwards, before issuing again
	}{
		{name: "before it", cut: func(l *line) { l.stayDown.Store(true); l.drop() }, want: ErrLost, then: (*line).up},
		{name: "while the document is made", mid: (*line).drop, want: ErrLost},
		{name: "before the commit arrives", cut: func(l *line) { l.atCommit.Store(dropCommit) }, want: ErrLost},
		{name: "before the commit is answered", cut: func(l *line) { l.atCommit.Store(dropAnswer) }, taken: 1},
		{name: "before the commit arrives, for good", want: ErrUncertain, then: (*line).up,
			cut: func(l *line) { l.atCommit.Store(dropCommit); l.stayDown.Store(true) }},
		{name: "before the commit is answered, for good", want: ErrUncertain, taken: 1, then: (*line).up,
			cut: func(l *line) { l.atCommit.Store(dropAnswer); l.stayDown.Store(true) }},
	} {
		t.Run(row.name, func(t *testing.T) {
			p := serverPractice(t)
			l := newLine(t, p.path)
			far := *p
			far.path = l.address
			far.book = far.open(Options{})
			if row.cut != nil {
				row.cut(l)
			}
			done, err := far.book.Issue(t.Context(), far.request("S-1", "x"), func(n Number, id uuid.UUID, at time.Time) ([]byte, error) {
				if row.mid != nil {
					row.mid(l)
				}
				return render(n, id, at)
			})
			if !errors.Is(err, row.want) || err != nil && (row.want == nil || Hint(err) == "" || strings.Contains(err.Error(), "\n")) {
				t.Errorf("got %v, hint %q; want %v in one line, with a hint", err, Hint(err), row.want)
			}
			if err == nil {
				p.wantFile(done.Entry)
			} else {
				t.Log(err)
			}
			if n := len(p.entries()); n != row.taken {
				t.Errorf("%d numbers are taken, want %d", n, row.taken)
			}
			if row.then != nil {
				row.then(l)
			}
			again, err := far.book.Issue(t.Context(), far.request("S-1", "x"), render)
			if err != nil || again.Entry.Number.Ordinal() != 1 {
				t.Fatalf("issued again: %v, %v; want number 1", again.Entry.Number, err)
			}
			p.wantFile(again.Entry)
			p.wantClean()
		})
	}
}

// A line passes everything on to a server until it is told to break.
type line struct {
	address  string // of the register, by way of this line
	server   string
	down     atomic.Bool  // nobody gets through
	stayDown atomic.Bool  // down from the first break on
	atCommit atomic.Int32 // what to do with the next commit
	conns    chan net.Conn
}

const (
	dropCommit = 1 // break before it is passed on
	dropAnswer = 2 // break before its answer is
)

func newLine(t *testing.T, address string) *line {
	t.Helper()
	u, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	l := &line{server: u.Host, conns: make(chan net.Conn, 100)}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { listener.Close(); l.drop() })
	u.Host = listener.Addr().String()
	l.address = u.String()
	go func() {
		for {
			client, err := listener.Accept()
			if err != nil {
				return
			}
			go l.pass(client)
		}
	}()
	return l
}

func (l *line) up() { l.down.Store(false); l.stayDown.Store(false) }

// drop breaks all that is connected.
func (l *line) drop() {
	l.down.Store(l.stayDown.Load())
	for {
		select {
		case c := <-l.conns:
			c.Close()
		default:
			return
		}
	}
}

func (l *line) pass(client net.Conn) {
	defer client.Close()
	if l.down.Load() {
		return
	}
	server, err := net.Dial("tcp", l.server)
	if err != nil {
		return
	}
	defer server.Close()
	l.conns <- client
	l.conns <- server
	go func() {
		defer client.Close()
		buf := make([]byte, 1<<16)
		for {
			n, err := server.Read(buf)
			if n > 0 && l.atCommit.CompareAndSwap(-dropAnswer, 0) {
				l.drop()
				return
			}
			if _, w := client.Write(buf[:n]); err != nil || w != nil {
				return
			}
		}
	}()
	buf := make([]byte, 1<<16)
	for {
		n, err := client.Read(buf)
		if bytes.Contains(buf[:n], []byte("commit\x00")) {
			switch l.atCommit.Load() {
			case dropCommit:
				l.atCommit.Store(0)
				l.drop()
				return
			case dropAnswer:
				l.atCommit.Store(-dropAnswer)
			}
		}
		if _, w := server.Write(buf[:n]); err != nil || w != nil {
			return
		}
	}
}

// TestServerRefusals looks at the words for what a server may say.
func TestServerRefusals(t *testing.T) {
	server := needServer(t)
	with := func(change func(u *url.URL, q url.Values)) string {
		u, err := url.Parse(server)
		if err != nil {
			t.Fatal(err)
		}
		q := u.Query()
		change(u, q)
		u.RawQuery = q.Encode()
		return u.String()
	}
	silent, err := net.Listen("tcp", "127.0.0.1:0") // takes calls and says nothing
	if err != nil {
		t.Fatal(err)
	}
	defer silent.Close()
	for _, row := range []struct {
		name, address string
		want          error
		message       string
	}{
		{"nobody there", with(func(u *url.URL, _ url.Values) { u.Host = "127.0.0.1:1" }), ErrLost, "connection refused"},
		{"no answer", with(func(u *url.URL, q url.Values) { u.Host = silent.Addr().String(); q.Set("connect_timeout", "1") }), ErrLost, "timeout"},
		{"no such database", with(func(u *url.URL, _ url.Values) { u.Path = "/nowhere" }), nil, `database "nowhere" does not exist`},
		{"no such user", with(func(u *url.URL, _ url.Values) { u.User = url.UserPassword("nobody", "hush") }), nil, `role "nobody" does not exist`},
		{"no port", with(func(u *url.URL, _ url.Values) {
			u.Host = "127.0.0.1:99999"
			u.User = url.UserPassword("nobody", "hush")
		}), nil, "port"},
		{"several schemas", with(func(_ *url.URL, q url.Values) { q.Set("search_path", "a,b") }), nil, `search_path "a,b"`},
		{"another program's schema", with(func(_ *url.URL, q url.Values) { q.Set("search_path", "pg_catalog") }), ErrNotRegister, "schema pg_catalog holds tables of another program"},
	} {
		t.Run(row.name, func(t *testing.T) {
			p := &practice{now: time.Now()}
			_, reading := OpenReader(t.Context(), row.address)
			_, writing := Open(t.Context(), row.address, Options{Prefix: "HL", Zone: time.UTC, Now: func() time.Time { return p.now }, Rand: zeros{}})
			for _, err := range []error{reading, writing} {
				if err == nil || row.want != nil && !errors.Is(err, row.want) || !strings.Contains(err.Error(), row.message) {
					t.Errorf("got %v, want %v: %s", err, row.want, row.message)
				}
				t.Log(err)
				if err != nil && (strings.Contains(err.Error(), "hush") || strings.Contains(err.Error(), "\n")) {
					t.Errorf("the message shows the password, or has several lines: %v", err)
				}
			}
		})
	}
}

type zeros struct{}

func (zeros) Read(b []byte) (int, error) { clear(b); return len(b), nil }

// TestServerStates opens registers in states that a file has others for.
func TestServerStates(t *testing.T) {
	t.Run("reading makes nothing", func(t *testing.T) {
		address := testSchema(t)
		for range 2 {
			if _, err := OpenReader(t.Context(), address); !errors.Is(err, ErrNoRegister) || Hint(err) == "" {
				t.Errorf("got %v, want ErrNoRegister with a hint", err)
			}
		}
	})
	t.Run("newer", func(t *testing.T) {
		p := serverPractice(t)
		p.sql(`UPDATE book SET version = 3`)
		_, reading := OpenReader(t.Context(), p.path)
		_, writing := Open(t.Context(), p.path, p.book.opts)
		if !errors.Is(reading, ErrNewer) || !errors.Is(writing, ErrNewer) {
			t.Errorf("got %v and %v, want ErrNewer", reading, writing)
		}
	})
	t.Run("a table gone", func(t *testing.T) {
		p := serverPractice(t)
		p.sql(`DROP TABLE documents`)
		_, err := p.book.Issue(t.Context(), p.request("S-1", "x"), render)
		if !errors.Is(err, ErrNotRegister) {
			t.Errorf("got %v, want ErrNotRegister", err)
		}
		if names := p.names(); len(names) > 0 {
			t.Errorf("left in the folder: %q", names)
		}
	})
	t.Run("read-only server", func(t *testing.T) {
		p := serverPractice(t)
		p.path += "&default_transaction_read_only=on"
		p.book.Close()
		b, err := Open(t.Context(), p.path, p.book.opts)
		if err != nil {
			t.Fatal(err)
		}
		defer b.Close()
		_, err = b.Issue(t.Context(), p.request("S-1", "x"), render)
		if err == nil || !strings.Contains(err.Error(), "read-only copy") {
			t.Errorf("got %v, want that the server is a read-only copy", err)
		}
	})
	t.Run("many first at once", func(t *testing.T) {
		address := testSchema(t)
		errs := make(chan error)
		for i := range 4 {
			go func() {
				b, err := Open(t.Context(), address, Options{Prefix: "HL", Zone: time.UTC, Now: time.Now, Rand: zeros{}})
				if err == nil {
					b.Close()
				}
				if err != nil {
					err = fmt.Errorf("%d: %w", i, err)
				}
				errs <- err
			}()
		}
		for range 4 {
			if err := <-errs; err != nil {
				t.Error(err)
			}
		}
	})
}

// TestWritersAreCutOff leaves a writer that holds the book and is not heard of.
func TestWritersAreCutOff(t *testing.T) {
	p := serverPractice(t)
	var idle, commit string
	err := p.book.store.write(t.Context(), func(w *tx) error {
		return w.sql.QueryRowContext(w.ctx, `SELECT current_setting('idle_in_transaction_session_timeout'), current_setting('synchronous_commit')`).Scan(&idle, &commit)
	})
	if err != nil || idle != "2min" || commit != "on" {
		t.Errorf("a silent writer is cut off after %q, a commit is synced: %q, %v; want 2min, on", idle, commit, err)
	}
}
