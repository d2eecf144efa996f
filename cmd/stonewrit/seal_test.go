package main

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/x509"
	"crypto/x509/pkix"
	"database/sql"
	"fmt"
	"math/big"
	"net/url"
	"os"
	"strings"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
	"software.sslmate.com/src/go-pkcs12"
)

// keyFile writes a key with a certificate of its own making, valid in 2026 and
// 2027:
//
//	key FILE PASSWORD
func keyFile(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: key FILE PASSWORD")
	}
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	ts.Check(err)
	template := &x509.Certificate{
		SerialNumber: big.NewInt(1), Subject: pkix.Name{CommonName: "Invented practice"}, KeyUsage: x509.KeyUsageDigitalSignature,
		NotBefore: time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC), NotAfter: time.Date(2027, 12, 31, 0, 0, 0, 0, time.UTC),
	}
	der, err := x509.CreateCertificate(rand.Reader, template, template, key.Public(), key)
	ts.Check(err)
	certificate, err := x509.ParseCertificate(der)
	ts.Check(err)
	data, err := pkcs12.Modern2023.Encode(key, certificate, nil, args[1])
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), data, 0o600))
}

// appendTo adds an empty update to a PDF (ISO 32000-1, 7.5.6):
//
//	append FILE
func appendTo(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: append FILE")
	}
	data := ts.ReadFile(args[0])
	dict, end, _ := strings.Cut(data[strings.LastIndex(data, "trailer"):], "startxref")
	dict = strings.Replace(dict, "<<", "<</Prev "+strings.Fields(end)[0]+" ", 1)
	data += fmt.Sprintf("xref\n0 0\n%sstartxref\n%d\n%%%%EOF\n", dict, len(data))
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(data), 0o600))
}

// fill copies a file with a word replaced:
//
//	fill FROM TO WORD OTHER
func fill(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 4 {
		ts.Fatalf("usage: fill FROM TO WORD OTHER")
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[1]), []byte(strings.ReplaceAll(ts.ReadFile(args[0]), args[2], args[3])), 0o600))
}

// serverVariable names the variable with the address of a PostgreSQL server for
// tests.
const serverVariable = "STONEWRIT_TEST_POSTGRES"

// serverCondition is the condition [server] of scripts.
func serverCondition(condition string) (bool, error) {
	if condition == "server" {
		return os.Getenv(serverVariable) != "", nil
	}
	return false, fmt.Errorf("unknown condition %q", condition)
}

// serverSetup gives each script the address of a register of its own on the
// server for tests, in REGISTER, and removes it at the end.
func serverSetup(env *testscript.Env) error {
	server := os.Getenv(serverVariable)
	if server == "" {
		return nil
	}
	schema := "script_" + strings.ToLower(rand.Text())
	u, err := url.Parse(server)
	if err != nil {
		return err
	}
	query := u.Query()
	query.Set("search_path", schema)
	u.RawQuery = query.Encode()
	env.Setenv("REGISTER", u.String())
	env.Defer(func() {
		db, err := sql.Open("pgx", server)
		if err != nil {
			return
		}
		defer db.Close()
		_, _ = db.Exec("DROP SCHEMA IF EXISTS " + schema + " CASCADE")
	})
	return nil
}
