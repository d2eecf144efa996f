package seal

import (
	"bytes"
	"crypto"
	"crypto/rsa"
	"crypto/x509"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"time"

	"github.com/digitorus/pdf"
	"github.com/digitorus/pdfsign/revocation"
	"github.com/digitorus/pdfsign/sign"
)

// Sign returns the PDF with a signature added behind it, by which its maker
// certifies it: no change is allowed afterwards. issued is the time written
// beside the signature. It returns [ErrExpired] if the certificate is not
// valid then, [ErrNotPDF].
func (k *Key) Sign(document []byte, issued time.Time) (signed []byte, err error) {
	if err := k.ValidOn(issued); err != nil {
		return nil, err
	}
	defer func() {
		if fault := recover(); fault != nil { // the library panics over damaged files
			signed, err = nil, fmt.Errorf("%w: %v", ErrNotPDF, fault)
		}
	}()
	in := bytes.NewReader(document)
	r, err := pdf.NewReader(in, in.Size())
	if err != nil {
		return nil, fmt.Errorf("%w: %v", ErrNotPDF, err)
	}
	// The library adds the signature's field, dictionary and gap; what goes into
	// the gap is made below, in the form of PAdES, which it does not offer.
	var out bytes.Buffer
	err = sign.Sign(in, &out, r, in.Size(), sign.SignData{
		Signature: sign.SignDataSignature{
			CertType: sign.CertificationSignature, DocMDPPerm: sign.DoNotAllowAnyChangesPerms,
			Info: sign.SignDataSignatureInfo{Name: k.Subject(), Date: issued},
		},
		Signer: blank{k.signer.Public()}, DigestAlgorithm: crypto.SHA256,
		Certificate: k.certificate, CertificateChains: k.chains(), RevocationData: k.room(),
	})
	if err != nil {
		return nil, fmt.Errorf("signing: %w", err)
	}
	signed = out.Bytes()
	if !bytes.HasPrefix(signed, document) {
		return nil, errors.New("signing: the library changed the document")
	}
	if err := k.fill(signed, len(document)); err != nil {
		return nil, fmt.Errorf("signing: %w", err)
	}
	return signed, nil
}

func (k *Key) chains() [][]*x509.Certificate {
	return [][]*x509.Certificate{append([]*x509.Certificate{k.certificate}, k.issuers...)}
}

// blank stands in for the key while the library makes room for the signature.
type blank struct{ public crypto.PublicKey }

func (b blank) Public() crypto.PublicKey { return b.public }

func (blank) Sign(io.Reader, []byte, crypto.SignerOpts) ([]byte, error) { return nil, nil }

// room makes the gap longer by the signature of a long key. The library leaves
// room for short ones, and damages the file when it finds it too small; what it
// does make room for is a list of revoked certificates, so it is handed zeros.
func (k *Key) room() revocation.InfoArchival {
	var room revocation.InfoArchival
	if public, ok := k.signer.Public().(*rsa.PublicKey); ok {
		_ = room.AddCRL(make([]byte, public.Size())) // never fails
	}
	return room
}

// The names of the two forms of a signature are as long as each other, so that
// one can be written over the other (ISO 32000-2, 12.8.3.3 and 12.8.3.4).
const (
	plainForm = "/SubFilter /adbe.pkcs7.detached"
	padesForm = "/SubFilter /ETSI.CAdES.detached"
)

// fill makes what the library has added behind the document a signature of
// PAdES: it names the form, signs all but the gap, and puts that into the gap.
func (k *Key) fill(signed []byte, document int) error {
	added := signed[document:]
	form, gap := bytes.Index(added, []byte(plainForm)), bytes.Index(added, []byte("/Contents<"))
	if form < 0 || gap < 0 {
		return errors.New("the library made no signature that can be filled in")
	}
	copy(added[form:], padesForm)
	from := document + gap + len("/Contents")
	length := bytes.IndexByte(signed[from:], '>') + 1
	covered := bytes.Join([][]byte{signed[:from], signed[from+length:]}, nil)
	message, err := k.cms(covered)
	if err != nil {
		return err
	}
	digits := signed[from+1 : from+length-1]
	if hex.EncodedLen(len(message)) > len(digits) {
		return fmt.Errorf("it has %d bytes, and the gap takes %d", len(message), len(digits)/2)
	}
	copy(digits, bytes.Repeat([]byte("0"), len(digits)))
	hex.Encode(digits, message)
	return nil
}
