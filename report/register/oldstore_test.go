package register

import (
	"compress/gzip"
	"database/sql"
	"fmt"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// oldPractice has the register that a program of version 1 of the tables wrote
// (testdata/README.md), and in its folder the documents it issued.
func oldPractice(t *testing.T, server bool) *practice {
	t.Helper()
	dir := t.TempDir()
	p := &practice{t: t, path: filepath.Join(dir, "register.db"), folder: filepath.Join(dir, "issued"),
		now: time.Date(2026, 12, 1, 9, 30, 0, 0, time.UTC)}
	packed, err := os.Open("testdata/version-1.db.gz")
	if err != nil {
		t.Fatal(err)
	}
	defer packed.Close()
	in, err := gzip.NewReader(packed)
	if err != nil {
		t.Fatal(err)
	}
	data, err := io.ReadAll(in)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(p.path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(p.folder, 0o700); err != nil {
		t.Fatal(err)
	}
	if server {
		file := p.path
		p.path = testSchema(t)
		p.copyOld(file)
	}
	return p
}

// copyOld makes the tables of version 1 on the server, with the rows of a file.
func (p *practice) copyOld(file string) {
	p.t.Helper()
	tables, err := os.ReadFile("testdata/version-1-postgres.sql")
	if err != nil {
		p.t.Fatal(err)
	}
	address, err := url.Parse(p.path)
	if err != nil {
		p.t.Fatal(err)
	}
	p.sql("CREATE SCHEMA "+address.Query().Get("search_path"), string(tables))
	from, err := sql.Open("sqlite", file)
	if err != nil {
		p.t.Fatal(err)
	}
	defer from.Close()
	to, err := sql.Open("pgx", p.path)
	if err != nil {
		p.t.Fatal(err)
	}
	defer to.Close()
	for _, table := range []string{"events", "entries", "documents"} {
		for _, row := range tableRows(p.t, from, table) {
			var names, places []string
			var values []any
			for _, c := range row {
				names, values = append(names, c.name), append(values, c.value)
				places = append(places, fmt.Sprintf("$%d", len(values)))
			}
			_, err := to.Exec(fmt.Sprintf("INSERT INTO %s (%s) VALUES (%s)", table, strings.Join(names, ", "), strings.Join(places, ", ")), values...)
			if err != nil {
				p.t.Fatal(err)
			}
		}
	}
}

type cell struct {
	name  string
	value any
}

func tableRows(t testing.TB, db *sql.DB, table string) [][]cell {
	t.Helper()
	rows, err := db.Query("SELECT * FROM " + table + " ORDER BY 1")
	if err != nil {
		t.Fatal(err)
	}
	defer rows.Close()
	names, err := rows.Columns()
	if err != nil {
		t.Fatal(err)
	}
	var list [][]cell
	for rows.Next() {
		cells, into := make([]cell, len(names)), make([]any, len(names))
		for i := range cells {
			cells[i].name, into[i] = names[i], &cells[i].value
		}
		if err := rows.Scan(into...); err != nil {
			t.Fatal(err)
		}
		list = append(list, cells)
	}
	if err := rows.Err(); err != nil {
		t.Fatal(err)
	}
	return list
}

// rowsOf reads a table behind the book's back.
func (p *practice) rowsOf(table string) [][]cell {
	p.t.Helper()
	db, err := sql.Open(p.driver(), p.path)
	if err != nil {
		p.t.Fatal(err)
	}
	defer db.Close()
	return tableRows(p.t, db, table)
}

// everyOldStore runs a test over version 1 of each kind of store.
func everyOldStore(t *testing.T, test func(t *testing.T, p *practice)) {
	t.Run("sqlite", func(t *testing.T) { test(t, oldPractice(t, false)) })
	t.Run("postgres", func(t *testing.T) {
		needServer(t)
		test(t, oldPractice(t, true))
	})
}

// tableVersion asks the store itself.
func (p *practice) tableVersion() int {
	p.t.Helper()
	query := `SELECT user_version FROM pragma_user_version`
	if p.onServer() {
		query = `SELECT version FROM book`
	}
	db, err := sql.Open(p.driver(), p.path)
	if err != nil {
		p.t.Fatal(err)
	}
	defer db.Close()
	var version int
	if err := db.QueryRow(query).Scan(&version); err != nil {
		p.t.Fatal(err)
	}
	return version
}
