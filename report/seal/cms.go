package seal

import (
	"crypto"
	"crypto/rand"
	"crypto/rsa"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/asn1"
	"math/big"
)

// Object identifiers, and the clause that says what each stands for.
var (
	oidData       = asn1.ObjectIdentifier{1, 2, 840, 113549, 1, 7, 1}         // RFC 5652, 4
	oidSignedData = asn1.ObjectIdentifier{1, 2, 840, 113549, 1, 7, 2}         // RFC 5652, 5.1
	oidType       = asn1.ObjectIdentifier{1, 2, 840, 113549, 1, 9, 3}         // content-type: RFC 5652, 11.1
	oidDigest     = asn1.ObjectIdentifier{1, 2, 840, 113549, 1, 9, 4}         // message-digest: RFC 5652, 11.2
	oidSigner     = asn1.ObjectIdentifier{1, 2, 840, 113549, 1, 9, 16, 2, 47} // signing-certificate-v2: RFC 5035, 3
	oidSHA256     = asn1.ObjectIdentifier{2, 16, 840, 1, 101, 3, 4, 2, 1}     // RFC 5754, 2.2
	oidRSA        = asn1.ObjectIdentifier{1, 2, 840, 113549, 1, 1, 1}         // RFC 3370, 3.2
	oidECDSA      = asn1.ObjectIdentifier{1, 2, 840, 10045, 4, 3, 2}          // with SHA-256: RFC 5754, 3.3
)

// The structures of RFC 5652, 5.1 and 5.3, as far as they are needed.
type (
	cmsContent struct {
		Type    asn1.ObjectIdentifier
		Content cmsSigned `asn1:"explicit,tag:0"`
	}
	cmsSigned struct {
		Version      int
		Digests      []pkix.AlgorithmIdentifier           `asn1:"set"`
		Content      struct{ Type asn1.ObjectIdentifier } // detached: the bytes are in the PDF
		Certificates []asn1.RawValue                      `asn1:"set,tag:0"`
		Signers      []cmsSigner                          `asn1:"set"`
	}
	cmsSigner struct {
		Version     int
		Certificate cmsSerial
		Digest      pkix.AlgorithmIdentifier
		Attributes  []cmsAttribute `asn1:"set,tag:0"`
		Algorithm   pkix.AlgorithmIdentifier
		Signature   []byte
	}
	cmsSerial struct {
		Issuer asn1.RawValue
		Serial *big.Int
	}
	cmsAttribute struct {
		Type   asn1.ObjectIdentifier
		Values []any `asn1:"set"`
	}
)

// signingCertificate is the value of signing-certificate-v2 (RFC 5035, 3 and 4):
// digests of certificates, that of the signer first, by SHA-256 where no
// algorithm is named.
type signingCertificate struct {
	Certificates []certificateID
	Policies     asn1.RawValue `asn1:"optional"`
}

type certificateID struct {
	Algorithm pkix.AlgorithmIdentifier `asn1:"optional"`
	Digest    []byte
	Serial    asn1.RawValue `asn1:"optional"`
}

// cms signs the bytes: a detached CMS signature with the three attributes that
// a baseline PAdES signature has, and without the time of signing, which it
// leaves to the dictionary around it.
func (k *Key) cms(covered []byte) ([]byte, error) {
	sum, own := Sum(covered), Sum(k.certificate.Raw)
	attributes := []cmsAttribute{
		{oidType, []any{oidData}},
		{oidDigest, []any{sum[:]}},
		{oidSigner, []any{signingCertificate{Certificates: []certificateID{{Digest: own[:]}}}}},
	}
	// What is signed is the set under the tag of a set: RFC 5652, 5.4.
	set, err := asn1.MarshalWithParams(attributes, "set")
	if err != nil {
		return nil, err
	}
	digest := Sum(set)
	signature, err := k.signer.Sign(rand.Reader, digest[:], crypto.SHA256)
	if err != nil {
		return nil, err
	}
	sha256 := pkix.AlgorithmIdentifier{Algorithm: oidSHA256}
	signed := cmsSigned{
		Version: 1, Digests: []pkix.AlgorithmIdentifier{sha256}, Certificates: k.rawCertificates(),
		Signers: []cmsSigner{{
			Version:     1,
			Certificate: cmsSerial{asn1.RawValue{FullBytes: k.certificate.RawIssuer}, k.certificate.SerialNumber},
			Digest:      sha256, Attributes: attributes, Algorithm: k.algorithm(), Signature: signature,
		}},
	}
	signed.Content.Type = oidData
	return asn1.Marshal(cmsContent{oidSignedData, signed})
}

func (k *Key) algorithm() pkix.AlgorithmIdentifier {
	if _, ok := k.signer.Public().(*rsa.PublicKey); ok {
		return pkix.AlgorithmIdentifier{Algorithm: oidRSA, Parameters: asn1.NullRawValue}
	}
	return pkix.AlgorithmIdentifier{Algorithm: oidECDSA}
}

func (k *Key) rawCertificates() []asn1.RawValue {
	var list []asn1.RawValue
	for _, c := range append([]*x509.Certificate{k.certificate}, k.issuers...) {
		list = append(list, asn1.RawValue{FullBytes: c.Raw})
	}
	return list
}
