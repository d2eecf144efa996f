package register

import (
	"crypto/rand"
	"database/sql"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// serverVariable names the environment variable with the address of a
// PostgreSQL server for tests: a database in which they may make schemas.
const serverVariable = "STONEWRIT_TEST_POSTGRES"

// An opener makes a practice whose book is new.
type opener func(testing.TB) *practice

// everyStore runs a test over each kind of store, with what makes practices of
// that kind.
func everyStore(t *testing.T, test func(t *testing.T, newPractice opener)) {
	t.Run("sqlite", func(t *testing.T) {
		t.Parallel()
		test(t, newPractice)
	})
	t.Run("postgres", func(t *testing.T) {
		needServer(t)
		t.Parallel()
		test(t, serverPractice)
	})
}

func needServer(t testing.TB) string {
	t.Helper()
	address := os.Getenv(serverVariable)
	if address == "" {
		t.Skipf("no PostgreSQL server to test with: %s is not set (.ci/with-postgres starts one)", serverVariable)
	}
	return address
}

// newPractice is a practice whose register is a file.
func newPractice(t testing.TB) *practice {
	t.Helper()
	dir := t.TempDir()
	p := &practice{
		t: t, path: filepath.Join(dir, "register.db"), folder: filepath.Join(dir, "issued"),
		now: time.Date(2026, 10, 14, 9, 30, 0, 0, time.UTC),
	}
	p.book = p.open(Options{})
	return p
}

// serverPractice is a practice whose register is a schema of its own on the
// server for tests.
func serverPractice(t testing.TB) *practice {
	t.Helper()
	p := &practice{
		t: t, path: testSchema(t), folder: filepath.Join(t.TempDir(), "issued"),
		now: time.Date(2026, 10, 14, 9, 30, 0, 0, time.UTC),
	}
	p.book = p.open(Options{})
	return p
}

// testSchema is the address of a schema that is not there yet, and is dropped
// at the end.
func testSchema(t testing.TB) string {
	t.Helper()
	address := needServer(t)
	name := "test_" + strings.ToLower(rand.Text())
	t.Cleanup(func() {
		db, err := sql.Open("pgx", address)
		if err != nil {
			t.Error(err)
			return
		}
		defer db.Close()
		if _, err := db.Exec("DROP SCHEMA IF EXISTS " + name + " CASCADE"); err != nil {
			t.Error(err)
		}
	})
	u, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	query := u.Query()
	query.Set("search_path", name)
	u.RawQuery = query.Encode()
	return u.String()
}

// onServer reports whether the practice's register is on a server.
func (p *practice) onServer() bool { return isAddress(p.path) }

func (p *practice) driver() string {
	if p.onServer() {
		return "pgx"
	}
	return "sqlite"
}

// sql runs statements on the store behind the book's back.
func (p *practice) sql(statements ...string) {
	p.t.Helper()
	db, err := sql.Open(p.driver(), p.path)
	if err != nil {
		p.t.Fatal(err)
	}
	defer db.Close()
	db.SetMaxOpenConns(1)
	for _, s := range statements {
		if _, err := db.ExecContext(p.t.Context(), p.dialect(s)); err != nil {
			p.t.Fatalf("%s: %v", s, err)
		}
	}
}

// dialect puts the few words of SQLite that tests use into PostgreSQL's.
func (p *practice) dialect(s string) string {
	if !p.onServer() {
		return s
	}
	return strings.NewReplacer(free, `SET session_replication_role = replica`, ` x'`, ` '\x`).Replace(s)
}
