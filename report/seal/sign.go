package seal

import (
	"bytes"
	"crypto"
	"crypto/x509"
	"fmt"
	"time"

	"github.com/digitorus/pdf"
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
	var out bytes.Buffer
	err = sign.Sign(in, &out, r, in.Size(), sign.SignData{
		Signature: sign.SignDataSignature{
			CertType: sign.CertificationSignature, DocMDPPerm: sign.DoNotAllowAnyChangesPerms,
			Info: sign.SignDataSignatureInfo{Name: k.Subject(), Date: issued},
		},
		Signer: k.signer, DigestAlgorithm: crypto.SHA256,
		Certificate: k.certificate, CertificateChains: k.chains(),
	})
	if err != nil {
		return nil, fmt.Errorf("signing: %w", err)
	}
	if !bytes.HasPrefix(out.Bytes(), document) {
		return nil, fmt.Errorf("signing: the library changed the document")
	}
	return out.Bytes(), nil
}

func (k *Key) chains() [][]*x509.Certificate {
	return [][]*x509.Certificate{append([]*x509.Certificate{k.certificate}, k.issuers...)}
}
