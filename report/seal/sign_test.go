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
	"encoding/hex"
	"encoding/pem"
	"errors"
	"fmt"
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

	named func(name string) *x509.Certificate // of the same key, issuer and serial number
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
	named := func(name string) *x509.Certificate { return made(template(2, name), issuer, key.Public()) }
	return certified{key, named("Kestrel Lane Gem Room"), issuer, named}
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
		{"long RSA in PKCS #12", func(t *testing.T) (*seal.Key, error) {
			return seal.LoadKey(newCertified(t, rsaKey(t, 4096)).p12(t, "hush"), "hush")
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
				doc.Signatures[0].Subject != "Kestrel Lane Gem Room" || !doc.Signatures[0].At.Equal(issued()) || doc.Signatures[0].Issuer != "Guild of Test Rooms" {
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
			for _, want := range []string{"Signature is Valid", "Total document signed", "Signer Certificate Common Name: Kestrel Lane Gem Room", "Signing Hash Algorithm: SHA-256", "Signature Type: ETSI.CAdES.detached"} {
				if !strings.Contains(said, want) {
					t.Errorf("pdfsig does not say %q:\n%s", want, said)
				}
			}
		})
	}
}

// TestBaseline has OpenSSL take a signature apart: what a baseline signature of
// PAdES holds and what it leaves out, ETSI EN 319 142-1, 6.3, table 1 (from
// memory); signing-certificate-v2: RFC 5035, 3.
func TestBaseline(t *testing.T) {
	for name, private := range map[string]func(testing.TB) crypto.Signer{
		"RSA": func(t testing.TB) crypto.Signer { return rsaKey(t, 2048) }, "elliptic": ellipticKey,
	} {
		t.Run(name, func(t *testing.T) {
			certified := newCertified(t, private(t))
			key, err := seal.LoadKey(certified.pem(t), "")
			if err != nil {
				t.Fatal(err)
			}
			signed, err := key.Sign(sample(t, nil), issued())
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Contains(signed, []byte(" /M (D:20261014093000")) {
				t.Error("the time of signing is not beside the signature")
			}
			dir := t.TempDir()
			from, to := bytes.Index(signed, []byte("/Contents<"))+len("/Contents"), 0
			to = from + bytes.IndexByte(signed[from:], '>') + 1
			message, err := hex.DecodeString(string(signed[from+1 : to-1]))
			if err != nil {
				t.Fatal(err)
			}
			write(t, dir+"/signature.der", message)
			write(t, dir+"/covered", append(bytes.Clone(signed[:from]), signed[to:]...))
			write(t, dir+"/root.pem", pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: certified.issuer.Raw}))
			at := fmt.Sprint(issued().Unix())
			said := tool(t, nil, "openssl", "cms", "-verify", "-binary", "-inform", "DER", "-in", dir+"/signature.der", "-content", dir+"/covered",
				"-CAfile", dir+"/root.pem", "-purpose", "any", "-attime", at, "-cades", "-out", dir+"/out")
			if !strings.Contains(said, "CAdES Verification successful") {
				t.Errorf("OpenSSL says:\n%s", said)
			}
			said = tool(t, nil, "openssl", "cms", "-cmsout", "-print", "-inform", "DER", "-in", dir+"/signature.der")
			for _, want := range []string{"contentType", "messageDigest", "signingCertificateV2", "CN=Kestrel Lane Gem Room", "CN=Guild of Test Rooms"} {
				if !strings.Contains(strings.ReplaceAll(said, " = ", "="), want) {
					t.Errorf("OpenSSL does not find %s:\n%s", want, said)
				}
			}
			if strings.Contains(said, "signingTime") {
				t.Error("the time of signing stands among the signed attributes as well")
			}
		})
	}
}

// TestAnotherCertificate puts another certificate of the same key, issuer and
// serial number into a signature, which signs no certificate but names one.
func TestAnotherCertificate(t *testing.T) {
	certified := newCertified(t, ellipticKey(t))
	key, err := seal.LoadKey(certified.pem(t), "")
	if err != nil {
		t.Fatal(err)
	}
	signed, err := key.Sign(sample(t, nil), issued())
	if err != nil {
		t.Fatal(err)
	}
	other := certified.named("Kestrel Lame Gem Room")
	for len(other.Raw) != len(certified.own.Raw) { // by a byte or two, as elliptic signatures do
		other = certified.named("Kestrel Lame Gem Room")
	}
	was, is := hex.EncodeToString(certified.own.Raw), hex.EncodeToString(other.Raw)
	if !bytes.Contains(signed, []byte(was)) {
		t.Fatal("the certificate is not in the signature")
	}
	found := open(t, bytes.Replace(signed, []byte(was), []byte(is), 1)).Check()
	if len(found) != 1 || !strings.Contains(found[0], "it was made for another certificate than the one it carries") {
		t.Errorf("found %q", found)
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
	for _, row := range []struct {
		name string
		key  crypto.Signer
		same bool
	}{{"RSA", rsaKey(t, 2048), true}, {"elliptic", ellipticKey(t), false}} {
		key, err := seal.LoadKey(newCertified(t, row.key).pem(t), "")
		if err != nil {
			t.Fatal(err)
		}
		var signed [2][]byte
		for i := range signed {
			if signed[i], err = key.Sign(sample(t, nil), issued()); err != nil {
				t.Fatal(err)
			}
		}
		if same := bytes.Equal(signed[0], signed[1]); same != row.same {
			t.Errorf("%s: two signatures of the same document are the same: %t, the package comment says %t", row.name, same, row.same)
		}
	}
	if !bytes.Equal(sample(t, nil), sample(t, nil)) {
		t.Error("the same document gives other bytes")
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
