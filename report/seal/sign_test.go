package seal_test

import (
	"bytes"
	"crypto"
	"crypto/ecdsa"
	"crypto/ed25519"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/rsa"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"errors"
	"math/big"
	"strings"
	"testing"
	"time"

	"software.sslmate.com/src/go-pkcs12"

	"stonewrit/report/seal"
)

// certified is a key with a certificate of an issuer of its own, valid for the
// year 2026 and the one after.
type certified struct {
	key         crypto.Signer
	own, issuer *x509.Certificate
}

func newCertified(t testing.TB, key crypto.Signer) certified {
	t.Helper()
	root, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	template := func(serial int64, name string) *x509.Certificate {
		return &x509.Certificate{
			SerialNumber: big.NewInt(serial), Subject: pkix.Name{CommonName: name},
			NotBefore: time.Date(2026, 1, 1, 0, 0, 0, 0, time.UTC), NotAfter: time.Date(2027, 12, 31, 0, 0, 0, 0, time.UTC),
			KeyUsage: x509.KeyUsageDigitalSignature | x509.KeyUsageCertSign, BasicConstraintsValid: true, IsCA: serial == 1,
		}
	}
	made := func(template, parent *x509.Certificate, public any) *x509.Certificate {
		der, err := x509.CreateCertificate(rand.Reader, template, parent, public, root)
		if err != nil {
			t.Fatal(err)
		}
		c, err := x509.ParseCertificate(der)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	issuer := template(1, "Guild of Test Rooms")
	issuer = made(issuer, issuer, root.Public())
	return certified{key, made(template(2, "Kestrel Lane Gem Room"), issuer, key.Public()), issuer}
}

func (c certified) p12(t testing.TB, password string) []byte {
	t.Helper()
	data, err := pkcs12.Modern2023.Encode(c.key, c.own, []*x509.Certificate{c.issuer}, password)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func (c certified) pem(t testing.TB) []byte {
	t.Helper()
	der, err := x509.MarshalPKCS8PrivateKey(c.key)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	for _, b := range []*pem.Block{{Type: "CERTIFICATE", Bytes: c.issuer.Raw}, {Type: "CERTIFICATE", Bytes: c.own.Raw}, {Type: "PRIVATE KEY", Bytes: der}} {
		if err := pem.Encode(&out, b); err != nil {
			t.Fatal(err)
		}
	}
	return out.Bytes()
}

func rsaKey(t testing.TB, bits int) crypto.Signer {
	t.Helper()
	t.Setenv("GODEBUG", "rsa1024min=0") // for a key that is too short on purpose
	key, err := rsa.GenerateKey(rand.Reader, bits)
	if err != nil {
		t.Fatal(err)
	}
	return key
}

func ellipticKey(t testing.TB) crypto.Signer {
	t.Helper()
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	return key
}

// TestSign has signatures proved by poppler, and by Open.
func TestSign(t *testing.T) {
	data := sample(t, nil)
	for _, row := range []struct {
		name string
		load func(t *testing.T) (*seal.Key, error)
	}{
		{"RSA in PKCS #12", func(t *testing.T) (*seal.Key, error) {
			return seal.LoadKey(newCertified(t, rsaKey(t, 2048)).p12(t, "hush"), "hush")
		}},
		{"elliptic in PKCS #12", func(t *testing.T) (*seal.Key, error) {
			return seal.LoadKey(newCertified(t, ellipticKey(t)).p12(t, "hush"), "hush")
		}},
		{"elliptic in PEM", func(t *testing.T) (*seal.Key, error) {
			return seal.LoadKey(newCertified(t, ellipticKey(t)).pem(t), "")
		}},
	} {
		t.Run(row.name, func(t *testing.T) {
			key, err := row.load(t)
			if err != nil {
				t.Fatal(err)
			}
			if key.Subject() != "Kestrel Lane Gem Room" {
				t.Errorf("the key is of %q", key.Subject())
			}
			signed, err := key.Sign(data, issued())
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.HasPrefix(signed, data) {
				t.Error("the signed document does not begin with the unsigned one")
			}
			doc := open(t, signed)
			if found := doc.Check(); len(found) > 0 {
				t.Errorf("found %q", found)
			}
			if len(doc.Signatures) != 1 || doc.Signatures[0].Err != nil || !doc.Signatures[0].Whole ||
				doc.Signatures[0].Subject != "Kestrel Lane Gem Room" || doc.Signatures[0].Issuer != "Guild of Test Rooms" {
				t.Errorf("signatures: %+v", doc.Signatures)
			}
			if string(doc.StoneFile().Data) != stoneFile || doc.UUID != sampleUUID {
				t.Error("the signed document holds something else")
			}
			file := t.TempDir() + "/signed.pdf"
			write(t, file, signed)
			if said := tool(t, nil, "qpdf", "--check", file); !strings.Contains(said, "No syntax or stream encoding errors") {
				t.Errorf("qpdf says:\n%s", said)
			}
			said := tool(t, nil, "pdfsig", "-nocert", file)
			for _, want := range []string{"Signature is Valid", "Total document signed", "Signer Certificate Common Name: Kestrel Lane Gem Room", "Signing Hash Algorithm: SHA-256"} {
				if !strings.Contains(said, want) {
					t.Errorf("pdfsig does not say %q:\n%s", want, said)
				}
			}
		})
	}
}

// TestChangedAfterSigning changes a byte of what is signed, and adds something.
func TestChangedAfterSigning(t *testing.T) {
	key, err := seal.LoadKey(newCertified(t, ellipticKey(t)).p12(t, "hush"), "hush")
	if err != nil {
		t.Fatal(err)
	}
	signed, err := key.Sign(sample(t, nil), issued())
	if err != nil {
		t.Fatal(err)
	}
	changed := bytes.Replace(signed, []byte("<stonewrit:kind>note"), []byte("<stonewrit:kind>nota"), 1)
	file := t.TempDir() + "/changed.pdf"
	write(t, file, changed)
	found := open(t, changed).Check()
	if len(found) != 1 || !strings.Contains(found[0], "Kestrel Lane Gem Room: what it covers was changed after signing") {
		t.Errorf("changed: found %q", found)
	}
	added := open(t, addition(signed)).Check()
	if len(added) != 2 || !strings.Contains(added[0], "something was added to the file after Kestrel Lane Gem Room had signed it") {
		t.Errorf("added to: found %q", added)
	}
	if said := tool(t, nil, "pdfsig", "-nocert", file); !strings.Contains(said, "Digest Mismatch") {
		t.Errorf("pdfsig says:\n%s\nwant a digest mismatch", said)
	}
}

func TestSignedBytes(t *testing.T) {
	key, err := seal.LoadKey(newCertified(t, ellipticKey(t)).pem(t), "")
	if err != nil {
		t.Fatal(err)
	}
	first, err := key.Sign(sample(t, nil), issued())
	if err != nil {
		t.Fatal(err)
	}
	second, err := key.Sign(sample(t, nil), issued())
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(sample(t, nil), sample(t, nil)) {
		t.Error("the same document gives other bytes")
	}
	if bytes.Equal(first, second) {
		t.Error("two signatures are the same; if that is so now, say it in the package comment")
	}
}

func TestKeysRefused(t *testing.T) {
	good := newCertified(t, ellipticKey(t))
	_, edwards, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	stranger := good
	stranger.key = ellipticKey(t)
	for _, row := range []struct {
		name, password string
		data           []byte
		want           error
		message        string
	}{
		{"wrong password", "hash", good.p12(t, "hush"), seal.ErrPassword, "the password is wrong"},
		{"no password", "", good.p12(t, "hush"), seal.ErrPassword, "the password is wrong"},
		{"text", "", []byte("stone: KL-0098\n"), seal.ErrKey, ""},
		{"empty", "", nil, seal.ErrKey, ""},
		{"a certificate alone", "", good.pem(t)[:bytes.Index(good.pem(t), []byte("-----BEGIN PRIVATE"))], seal.ErrKey, "no private key"},
		{"a key alone", "", good.pem(t)[bytes.Index(good.pem(t), []byte("-----BEGIN PRIVATE")):], seal.ErrKey, "none of its certificates"},
		{"another's certificate", "", stranger.pem(t), seal.ErrKey, "none of its certificates"},
		{"two keys", "", append(good.pem(t), good.pem(t)...), seal.ErrKey, "several keys"},
		{"encrypted in PEM", "hush", bytes.ReplaceAll(good.pem(t), []byte(" PRIVATE KEY"), []byte(" ENCRYPTED PRIVATE KEY")), seal.ErrKey, "openssl pkcs12"},
		{"short", "hush", newCertified(t, rsaKey(t, 1024)).p12(t, "hush"), seal.ErrKey, "1024 bits is too short"},
		{"Edwards curve", "", newCertified(t, edwards).pem(t), seal.ErrKey, "cannot sign a PDF"},
	} {
		_, err := seal.LoadKey(row.data, row.password)
		if !errors.Is(err, row.want) || !strings.Contains(err.Error(), row.message) || strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: got %v, want %v: %s", row.name, err, row.want, row.message)
		}
	}
}

func TestExpired(t *testing.T) {
	key, err := seal.LoadKey(newCertified(t, ellipticKey(t)).pem(t), "")
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range []time.Time{issued().AddDate(-1, 0, 0), issued().AddDate(2, 0, 0)} {
		_, err := key.Sign(sample(t, nil), at)
		if !errors.Is(err, seal.ErrExpired) || !strings.Contains(err.Error(), "valid from 2026-01-01 to 2027-12-31") {
			t.Errorf("on %s: got %v, want ErrExpired with the days", at.Format(time.DateOnly), err)
		}
	}
}

// TestOpenSSL reads a key as OpenSSL writes it.
func TestOpenSSL(t *testing.T) {
	dir := t.TempDir()
	tool(t, nil, "openssl", "req", "-x509", "-newkey", "rsa:2048", "-nodes", "-keyout", dir+"/key.pem", "-out", dir+"/cert.pem", "-days", "2", "-subj", "/O=Kestrel Lane")
	for _, how := range [][]string{nil, {"-legacy"}} {
		args := append([]string{"pkcs12", "-export", "-inkey", dir + "/key.pem", "-in", dir + "/cert.pem", "-out", dir + "/key.p12", "-passout", "pass:hush"}, how...)
		tool(t, nil, "openssl", args...)
		key, err := seal.LoadKey(read(t, dir+"/key.p12"), "hush")
		if err != nil {
			t.Errorf("%v: %v", how, err)
			continue
		}
		if key.Subject() != "O=Kestrel Lane" {
			t.Errorf("%v: the key is of %q", how, key.Subject())
		}
	}
	both := append(read(t, dir+"/key.pem"), read(t, dir+"/cert.pem")...)
	if _, err := seal.LoadKey(both, ""); err != nil {
		t.Errorf("PEM: %v", err)
	}
}
