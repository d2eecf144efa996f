package seal

import (
	"crypto"
	"crypto/ecdsa"
	"crypto/rsa"
	"crypto/x509"
	"encoding/pem"
	"errors"
	"fmt"
	"strings"
	"time"

	"software.sslmate.com/src/go-pkcs12"
)

// A Key signs documents. It never leaves the memory of the program.
type Key struct {
	signer      crypto.Signer
	certificate *x509.Certificate
	issuers     []*x509.Certificate // of the certificate, in their order
}

// LoadKey reads a private key with its certificate: a PKCS #12 file (.p12,
// .pfx), opened with the password, or PEM blocks with an unencrypted key,
// whose password is empty. Keys are RSA of at least 2048 bits or elliptic
// (NIST curves).
//
// Errors: [ErrPassword], [ErrKey].
func LoadKey(data []byte, password string) (*Key, error) {
	var private any
	var certificates []*x509.Certificate
	var err error
	if block, _ := pem.Decode(data); block != nil {
		private, certificates, err = readPEM(data)
	} else {
		var own *x509.Certificate
		var issuers []*x509.Certificate
		private, own, issuers, err = pkcs12.DecodeChain(data, password)
		certificates = append([]*x509.Certificate{own}, issuers...)
		if errors.Is(err, pkcs12.ErrIncorrectPassword) {
			return nil, ErrPassword
		}
	}
	if err != nil {
		return nil, fmt.Errorf("%w: %v", ErrKey, err)
	}
	return newKey(private, certificates)
}

// readPEM reads one private key and the certificates in the order of the file.
func readPEM(data []byte) (private any, certificates []*x509.Certificate, err error) {
	for {
		var block *pem.Block
		if block, data = pem.Decode(data); block == nil {
			break
		}
		switch {
		case block.Type == "CERTIFICATE":
			c, err := x509.ParseCertificate(block.Bytes)
			if err != nil {
				return nil, nil, err
			}
			certificates = append(certificates, c)
		case block.Type == "ENCRYPTED PRIVATE KEY" || block.Headers["DEK-Info"] != "":
			return nil, nil, errors.New("an encrypted key in PEM is not read; put key and certificate into a PKCS #12 file (openssl pkcs12 -export)")
		case strings.HasSuffix(block.Type, "PRIVATE KEY") && private != nil:
			return nil, nil, errors.New("it holds several keys")
		case strings.HasSuffix(block.Type, "PRIVATE KEY"):
			if private, err = parsePrivate(block.Bytes); err != nil {
				return nil, nil, err
			}
		}
	}
	return private, certificates, nil
}

func parsePrivate(der []byte) (any, error) {
	if k, err := x509.ParsePKCS1PrivateKey(der); err == nil {
		return k, nil
	}
	if k, err := x509.ParseECPrivateKey(der); err == nil {
		return k, nil
	}
	return x509.ParsePKCS8PrivateKey(der)
}

const leastRSA = 2048 // bits: NIST SP 800-131A rev. 2, table 2

// newKey finds the certificate of the key, and puts the others in the order of
// issue.
func newKey(private any, certificates []*x509.Certificate) (*Key, error) {
	k := &Key{}
	switch private := private.(type) {
	case nil:
		return nil, fmt.Errorf("%w: it holds no private key", ErrKey)
	case *rsa.PrivateKey:
		if private.N.BitLen() < leastRSA {
			return nil, fmt.Errorf("%w: an RSA key of %d bits is too short, %d is the least", ErrKey, private.N.BitLen(), leastRSA)
		}
		k.signer = private
	case *ecdsa.PrivateKey:
		k.signer = private
	default:
		return nil, fmt.Errorf("%w: a key of this kind cannot sign a PDF; RSA and elliptic keys (NIST curves) can", ErrKey)
	}
	public := k.signer.Public().(interface{ Equal(crypto.PublicKey) bool })
	for _, c := range certificates {
		if c != nil && public.Equal(c.PublicKey) {
			k.certificate = c
		}
	}
	if k.certificate == nil {
		return nil, fmt.Errorf("%w: none of its certificates is that of its key", ErrKey)
	}
	k.issuers = chain(k.certificate, certificates)
	return k, nil
}

// chain returns the issuers of a certificate as far as they are at hand.
func chain(of *x509.Certificate, from []*x509.Certificate) []*x509.Certificate {
	var list []*x509.Certificate
	for range from {
		next := of
		for _, c := range from {
			if c != nil && !c.Equal(of) && of.CheckSignatureFrom(c) == nil {
				next = c
			}
		}
		if next == of {
			break
		}
		list, of = append(list, next), next
	}
	return list
}

// Subject is whose certificate it is.
func (k *Key) Subject() string { return subject(k.certificate) }

func subject(c *x509.Certificate) string {
	if c.Subject.CommonName != "" {
		return c.Subject.CommonName
	}
	return c.Subject.String()
}

// ValidOn returns [ErrExpired] unless the certificate is valid at a time.
func (k *Key) ValidOn(at time.Time) error {
	c := k.certificate
	if at.Before(c.NotBefore) || at.After(c.NotAfter) {
		return fmt.Errorf("%w: that of %s is valid from %s to %s", ErrExpired, k.Subject(), c.NotBefore.Format(time.DateOnly), c.NotAfter.Format(time.DateOnly))
	}
	return nil
}
