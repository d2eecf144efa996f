package register

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
)

// A Digest is a SHA-256 (FIPS 180-4). It is printed as 64 hexadecimal digits.
type Digest [sha256.Size]byte

// Sum returns the digest of data.
func Sum(data []byte) Digest { return sha256.Sum256(data) }

// SumList returns one digest for a list of things in their order, such as the
// photos of a stone: the digest of their digests one after another. It is the
// same only if every one and the order are.
func SumList(parts ...Digest) Digest {
	h := sha256.New()
	for _, p := range parts {
		h.Write(p[:])
	}
	return Digest(h.Sum(nil))
}

// ParseDigest reads 64 hexadecimal digits.
func ParseDigest(s string) (Digest, error) {
	var d Digest
	if len(s) != hex.EncodedLen(len(d)) {
		return Digest{}, fmt.Errorf("digest %q is not of 64 hexadecimal digits", s)
	}
	if _, err := hex.Decode(d[:], []byte(s)); err != nil {
		return Digest{}, fmt.Errorf("digest %q: %v", s, err)
	}
	return d, nil
}

func (d Digest) String() string { return hex.EncodeToString(d[:]) }

// IsZero reports whether d was never set.
func (d Digest) IsZero() bool { return d == Digest{} }

// MarshalText returns the hexadecimal form.
func (d Digest) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads the hexadecimal form.
func (d *Digest) UnmarshalText(text []byte) error {
	parsed, err := ParseDigest(string(text))
	if err == nil {
		*d = parsed
	}
	return err
}

// Content is what decides whether a stone has changed since it was issued:
// the bytes of the stone file, of the photos it names, and of the letterhead
// in the bench file. The version of the program or of its tables is no part.
type Content struct {
	Stone      Digest `json:"stone_sha256"`
	Photos     Digest `json:"photos_sha256"` // SumList of the photos; SumList() where there are none
	Letterhead Digest `json:"letterhead_sha256"`
}

// Digest returns one digest for the three.
func (c Content) Digest() Digest { return SumList(c.Stone, c.Photos, c.Letterhead) }

// changed names the parts in which two contents differ.
func (c Content) changed(other Content) []string {
	var parts []string
	if c.Stone != other.Stone {
		parts = append(parts, "stone file")
	}
	if c.Photos != other.Photos {
		parts = append(parts, "photos")
	}
	if c.Letterhead != other.Letterhead {
		parts = append(parts, "letterhead")
	}
	return parts
}
