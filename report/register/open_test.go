package register

import (
	"errors"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func TestReadingMakesNoFile(t *testing.T) {
	dir := t.TempDir()
	for _, row := range []struct{ name, content string }{{"missing.db", "-"}, {"empty.db", ""}} {
		path := filepath.Join(dir, row.name)
		if row.content != "-" {
			if err := os.WriteFile(path, nil, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		before := snapshot(t, dir)
		if _, err := OpenReader(t.Context(), path); !errors.Is(err, ErrNoRegister) || Hint(err) == "" {
			t.Errorf("%s: got %v, want ErrNoRegister with a hint", row.name, err)
		}
		if after := snapshot(t, dir); after != before {
			t.Errorf("%s: the folder was %s, is %s", row.name, before, after)
		}
	}
}

func TestOpenRefuses(t *testing.T) {
	for _, row := range []struct {
		name    string
		damage  func(p *practice)
		want    error
		message string
	}{
		{"text file", func(p *practice) {
			os.WriteFile(p.path, []byte(strings.Repeat("stonewrit: 1\n", 100)), 0o600)
		}, ErrNotRegister, "not a database"},
		{"another program's", func(p *practice) { p.sql(`PRAGMA application_id = 7`) }, ErrNotRegister, "another program"},
		{"newer", func(p *practice) { p.sql(`PRAGMA user_version = 3`) }, ErrNewer, "version 3, this program knows 2"},
	} {
		t.Run(row.name, func(t *testing.T) {
			p := newPractice(t)
			p.book.Close()
			row.damage(p)
			before := snapshot(t, filepath.Dir(p.path))
			_, reading := OpenReader(t.Context(), p.path)
			_, writing := Open(t.Context(), p.path, p.book.opts)
			for _, err := range []error{reading, writing} {
				if !errors.Is(err, row.want) || !strings.Contains(err.Error(), row.message) || Hint(err) == "" {
					t.Errorf("got %v, want %v: %s", err, row.want, row.message)
				}
			}
			if after := snapshot(t, filepath.Dir(p.path)); after != before {
				t.Errorf("the folder was %s, is %s", before, after)
			}
		})
	}
}

func TestOpenOptions(t *testing.T) {
	path := filepath.Join(t.TempDir(), "register.db")
	good := Options{Prefix: "HL", Zone: time.UTC, Now: time.Now, Rand: rand.NewChaCha8([32]byte{})}
	for _, row := range []struct {
		name, path, message string
		change              func(*Options)
	}{
		{"prefix", path, `prefix "h l"`, func(o *Options) { o.Prefix = "h l" }},
		{"zone", path, "a zone", func(o *Options) { o.Zone = nil }},
		{"server", "postgres://localhost/book?search_path=a,b", "the name of one schema", func(*Options) {}},
		{"folder missing", filepath.Join(path, "x.db"), "no such file", func(*Options) {}},
	} {
		o := good
		row.change(&o)
		if _, err := Open(t.Context(), row.path, o); err == nil || !strings.Contains(err.Error(), row.message) {
			t.Errorf("%s: got %v, want %q", row.name, err, row.message)
		}
	}
	if _, err := os.Stat(path); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a refused register was made: %v", err)
	}
}

// TestPathsAreTaken asks for names that mean something in an address.
func TestPathsAreTaken(t *testing.T) {
	for _, name := range []string{"a b.db", "50%.db", "what?mode=ro.db", "no#1.db", "größe.db"} {
		p := newPractice(t)
		p.path = filepath.Join(t.TempDir(), name)
		p.book = p.open(Options{})
		p.issue("S-1", "x")
		p.wantClean()
		if _, err := os.Stat(p.path); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestDurability asks the database itself how it is set.
func TestDurability(t *testing.T) {
	p := newPractice(t)
	for _, row := range []struct{ pragma, want, why string }{
		{"journal_mode", "delete", "one file at rest"},
		{"synchronous", "3", "EXTRA: a commit outlives a power cut before the PDF gets its name"},
		{"foreign_keys", "1", "no PDF without entry, no entry without event"},
		{"busy_timeout", "30000", "half a minute for another writer"},
	} {
		var got string
		err := p.book.store.write(t.Context(), func(w *tx) error {
			return w.sql.QueryRowContext(t.Context(), `PRAGMA `+row.pragma).Scan(&got)
		})
		if err != nil || got != row.want {
			t.Errorf("%s is %q, %v, want %q: %s", row.pragma, got, err, row.want, row.why)
		}
	}
}

func TestNothingIsDeleted(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		p.issue("S-1", "x")
		for _, statement := range []string{
			`DELETE FROM events`, `UPDATE events SET body = '{}'`, `DELETE FROM entries`,
			`DELETE FROM documents`, `UPDATE documents SET gzip = x'00'`,
		} {
			err := p.book.store.write(t.Context(), func(w *tx) error {
				_, err := w.sql.ExecContext(t.Context(), p.dialect(statement))
				return err
			})
			if err == nil || !strings.Contains(err.Error(), "never") {
				t.Errorf("%s: got %v, want a refusal", statement, err)
			}
		}
		p.wantClean()
	})
}

// snapshot describes every file below a folder.
func snapshot(t *testing.T, dir string) string {
	t.Helper()
	var b strings.Builder
	err := filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		b.WriteString(name + " " + info.Mode().String() + " " + info.ModTime().String())
		if !d.IsDir() {
			data, err := os.ReadFile(name)
			if err != nil {
				return err
			}
			b.WriteString(" " + Sum(data).String())
		}
		b.WriteByte('\n')
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return b.String()
}
