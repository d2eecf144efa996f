package seal

import (
	"bytes"
	"crypto/x509"
	"errors"
	"fmt"
	"time"

	"github.com/digitorus/pkcs7"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/types"
)

// A Signature is one in a document.
type Signature struct {
	Subject     string    // whose certificate it is
	Issuer      string    // who issued that; the same for one of the practice's own making
	Fingerprint Digest    // SHA-256 of the certificate, to be compared with what the practice says it is
	At          time.Time // by the clock of the one who signed; zero if it does not say
	Whole       bool      // it covers the file to its end
	Err         error     // why it does not hold; nil if what it covers is unchanged
}

// signatures reads and proves the signatures of the document's form (ISO
// 32000-1, 12.8). Whether a certificate can be trusted is not judged.
func (d *Document) signatures(ctx *model.Context, data []byte) {
	for _, dict := range signatureDicts(ctx) {
		d.Signatures = append(d.Signatures, prove(ctx, dict, data))
	}
}

// signatureDicts finds the values of the signature fields.
func signatureDicts(ctx *model.Context) []types.Dict {
	catalog, err := ctx.Catalog()
	if err != nil {
		return nil
	}
	form := entry(ctx, catalog, "AcroForm")
	if form == nil {
		return nil
	}
	fields, _ := form.Find("Fields")
	list, err := ctx.DereferenceArray(fields)
	if err != nil {
		return nil
	}
	var found []types.Dict
	for _, field := range list {
		f, err := ctx.DereferenceDict(field)
		if err != nil || f == nil {
			continue
		}
		if v := entry(ctx, f, "V"); v != nil {
			if _, ok := v.Find("ByteRange"); ok {
				found = append(found, v)
			}
		}
	}
	return found
}

// entry is a dictionary within a dictionary, or nil.
func entry(ctx *model.Context, d types.Dict, key string) types.Dict {
	o, ok := d.Find(key)
	if !ok {
		return nil
	}
	inner, err := ctx.DereferenceDict(o)
	if err != nil {
		return nil
	}
	return inner
}

// prove checks one signature.
func prove(ctx *model.Context, dict types.Dict, data []byte) (s Signature) {
	defer func() {
		if fault := recover(); fault != nil {
			s.Err = fmt.Errorf("it cannot be read: %v", fault)
		}
	}()
	covered, whole, err := signedBytes(ctx, dict, data)
	if err != nil {
		return Signature{Err: err}
	}
	contents, err := signatureBytes(ctx, dict)
	if err != nil {
		return Signature{Err: err}
	}
	message, err := pkcs7.Parse(contents)
	if err != nil {
		return Signature{Err: fmt.Errorf("it cannot be read: %v", err)}
	}
	message.Content = covered
	s = describe(message.GetOnlySigner())
	s.Whole = whole
	s.At = signingTime(ctx, dict)
	var mismatch *pkcs7.MessageDigestMismatchError
	switch err := message.Verify(); {
	case errors.As(err, &mismatch):
		s.Err = errors.New("what it covers was changed after signing")
	case err != nil:
		s.Err = fmt.Errorf("it does not hold: %v", err)
	case !namesSigner(message):
		s.Err = errors.New("it was made for another certificate than the one it carries")
	}
	return s
}

// namesSigner reports whether the certificate that the signature carries is the
// one that it was made for (signing-certificate-v2), where it says that by
// SHA-256.
func namesSigner(message *pkcs7.PKCS7) bool {
	var named signingCertificate
	if err := message.UnmarshalSignedAttribute(oidSigner, &named); err != nil || len(named.Certificates) == 0 {
		return true // it does not say
	}
	first := named.Certificates[0]
	if a := first.Algorithm.Algorithm; a != nil && !a.Equal(oidSHA256) {
		return true
	}
	own := Sum(message.GetOnlySigner().Raw)
	return bytes.Equal(first.Digest, own[:])
}

// signingTime is when the signature says that it was made; zero if it does not.
func signingTime(ctx *model.Context, dict types.Dict) time.Time {
	o, ok := dict.Find("M")
	if !ok {
		return time.Time{}
	}
	text, err := ctx.DereferenceText(o)
	if err != nil {
		return time.Time{}
	}
	at, _ := types.DateTime(text, true)
	return at
}

func describe(c *x509.Certificate) Signature {
	if c == nil {
		return Signature{Subject: "nobody"}
	}
	s := Signature{Subject: subject(c), Issuer: c.Issuer.CommonName, Fingerprint: Sum(c.Raw)}
	if s.Issuer == "" {
		s.Issuer = c.Issuer.String()
	}
	return s
}

// signedBytes are the bytes that the signature covers: all but itself.
func signedBytes(ctx *model.Context, dict types.Dict, data []byte) (covered []byte, whole bool, err error) {
	o, _ := dict.Find("ByteRange")
	list, err := ctx.DereferenceArray(o)
	if err != nil || len(list) != 4 {
		return nil, false, errors.New("what it covers is not told")
	}
	var at [4]int
	for i, o := range list {
		n, err := ctx.DereferenceInteger(o)
		if err != nil || n == nil {
			return nil, false, errors.New("what it covers is not told")
		}
		at[i] = n.Value()
	}
	end := at[2] + at[3]
	if at[0] != 0 || at[1] < 0 || at[2] < at[1] || at[3] < 0 || end > len(data) || end < at[2] {
		return nil, false, errors.New("it says that it covers bytes that are not there")
	}
	// The gap may hold the signature and nothing else, or something could hide there.
	gap := data[at[1]:at[2]]
	if len(gap) < 2 || gap[0] != '<' || gap[len(gap)-1] != '>' || bytes.ContainsFunc(gap[1:len(gap)-1], notHex) {
		return nil, false, errors.New("it leaves out more than itself")
	}
	return bytes.Join([][]byte{data[:at[1]], data[at[2]:end]}, nil), len(bytes.TrimSpace(data[end:])) == 0, nil
}

func notHex(r rune) bool {
	return (r < '0' || r > '9') && (r < 'a' || r > 'f') && (r < 'A' || r > 'F')
}

func signatureBytes(ctx *model.Context, dict types.Dict) ([]byte, error) {
	o, _ := dict.Find("Contents")
	o, err := ctx.Dereference(o)
	if err != nil {
		return nil, errors.New("it is missing")
	}
	switch o := o.(type) {
	case types.HexLiteral:
		return o.Bytes()
	case types.StringLiteral:
		return types.Unescape(o.Value())
	}
	return nil, errors.New("it is missing")
}
