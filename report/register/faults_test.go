package register

import (
	"database/sql"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
)

// hamper makes this process, an issuer, one to which something is denied:
// "size N" files larger than N bytes, "user N" what is denied to that user.
func hamper(how string) error {
	var n int
	if _, err := fmt.Sscanf(how, "size %d", &n); err == nil {
		signal.Ignore(syscall.SIGXFSZ) // a write then fails as on a full disk
		return syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: uint64(n), Max: uint64(n)})
	}
	if _, err := fmt.Sscanf(how, "user %d", &n); err == nil {
		return errors.Join(syscall.Setgid(n), syscall.Setuid(n))
	}
	return nil
}

const nobody = 65534 // Debian's user without rights

// TestDeniedWrites has an issuer fail for want of room or of rights. It must say
// so, take no number, and leave nothing; afterwards all goes on.
func TestDeniedWrites(t *testing.T) {
	for _, row := range []struct {
		name   string
		hamper string
		deny   func(p *practice)
		want   error
		also   string // in the message
		server bool   // is a fault with a register on a server, too
	}{
		{"disk full for the PDF", "size 200000", nil, ErrPDF, "issued: file too large", true},
		{"disk full for the register", "size 10000", nil, ErrWrite, "the disk is full", false},
		{"disk full from the first byte", "size 0", nil, nil, "", true},
		{"folder of the PDFs read-only", "user 65534", func(p *practice) { os.Chmod(p.folder, 0o500) }, ErrPDF, "issued: permission denied", true},
		{"folder of the register read-only", "user 65534", func(p *practice) { os.Chmod(filepath.Dir(p.path), 0o500) }, ErrWrite, "no right to write there", false},
		{"register read-only", "user 65534", func(p *practice) { os.Chmod(p.path, 0o400) }, ErrWrite, "no right to write there", false},
	} {
		t.Run(row.name, func(t *testing.T) {
			everyStore(t, func(t *testing.T, newPractice opener) {
				p := newPractice(t)
				if p.onServer() && !row.server {
					t.Skip("a server's disk is not ours to fill or to close")
				}
				first := p.issue("before", "x")
				p.give(nobody)
				if row.deny != nil {
					row.deny(p)
				}
				cmd, said := p.startIssuer("F 1", "REGISTER_HAMPER="+row.hamper, "REGISTER_PDF=large")
				err := cmd.Wait()
				line := strings.TrimSpace(said.String())
				t.Log(line)
				if err == nil || strings.Contains(line, "\n") || !strings.Contains(line, row.also) || row.want != nil && !strings.Contains(line, row.want.Error()) {
					t.Errorf("got %v, %q; want a line with %v and %q", err, line, row.want, row.also)
				}
				p.give(os.Getuid())
				if n := len(p.entries()); n != 1 {
					t.Errorf("%d entries, want 1: no number is taken", n)
				}
				if names := p.names(); len(names) != 1 {
					t.Errorf("the folder holds %q, want the PDF of before alone", names)
				}
				p.wantFile(first.Entry)
				if next := p.issue("F-1", "F-1").Entry; next.Number.Ordinal() != 2 {
					t.Errorf("the next number is %s, want the second", next.Number)
				}
				p.wantClean()
			})
		})
	}
}

// give makes the files a user's, with the rights they are made with.
func (p *practice) give(user int) {
	p.t.Helper()
	if os.Getuid() != 0 {
		if user == nobody {
			p.t.Skip("only root can hand files to another user")
		}
		return
	}
	dir := filepath.Dir(p.folder)
	for parent := dir; len(parent) > len(os.TempDir()); parent = filepath.Dir(parent) {
		os.Chmod(parent, 0o755) // to be reached
	}
	err := filepath.WalkDir(dir, func(name string, d os.DirEntry, err error) error {
		mode := os.FileMode(0o600)
		if d.IsDir() {
			mode = 0o700
		}
		return errors.Join(err, os.Chown(name, user, user), os.Chmod(name, mode))
	})
	if err != nil {
		p.t.Fatal(err)
	}
}

// TestLocked has somebody hold the database with a SQL shell.
func TestLocked(t *testing.T) {
	everyStore(t, func(t *testing.T, newPractice opener) {
		p := newPractice(t)
		first := p.issue("S-1", "x")
		hasty := p.open(Options{Wait: 50 * time.Millisecond})
		db, err := sql.Open(p.driver(), p.path)
		if err != nil {
			t.Fatal(err)
		}
		defer db.Close()
		db.SetMaxOpenConns(1)
		lock := `BEGIN EXCLUSIVE`
		if p.onServer() {
			lock = `BEGIN; LOCK TABLE events`
		}
		if _, err := db.ExecContext(t.Context(), lock); err != nil {
			t.Fatal(err)
		}
		began := time.Now()
		_, err = hasty.Issue(t.Context(), p.request("S-2", "y"), render)
		if !errors.Is(err, ErrBusy) || Hint(err) == "" {
			t.Errorf("issue: got %v, want ErrBusy with a hint", err)
		}
		late, err := Open(t.Context(), p.path, hasty.opts)
		if err == nil { // a server lets it in
			_, err = late.Settle(t.Context(), p.folder)
			late.Close()
		}
		if !errors.Is(err, ErrBusy) {
			t.Errorf("open and settle: got %v, want ErrBusy", err)
		}
		if took := time.Since(began); took > 10*time.Second {
			t.Errorf("it took %v to say so", took)
		}
		if _, err := db.ExecContext(t.Context(), `ROLLBACK`); err != nil {
			t.Fatal(err)
		}
		if next := p.issue("S-2", "y").Entry; next.Number.Ordinal() != 2 {
			t.Errorf("the next number is %s, want the second", next.Number)
		}
		p.wantFile(first.Entry)
		p.wantClean()
	})
}
