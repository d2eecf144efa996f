package seal

import (
	"crypto/sha256"
	"encoding/hex"
)

// A Digest is a SHA-256 (FIPS 180-4).
type Digest = [sha256.Size]byte

// Sum returns the digest of data.
func Sum(data []byte) Digest { return sha256.Sum256(data) }

func hexadecimal(d Digest) string { return hex.EncodeToString(d[:]) }
