// Package seal closes a finished PDF and opens it again: the code that is
// printed at its end, the signature with the practice's own certificate, the
// password of a copy, and reading what a document holds to see whether its
// parts belong together.
//
// # What a document says of itself
//
// The XMP metadata hold number, UUID, and the SHA-256 of the two files that
// travel inside: the stone file as examined and the JSON of the examined
// stone. Number and UUID stand in print too, and so does the digest of the
// stone file; the code carries the number and the digest of the JSON. [Open]
// reads all of it, [Document.Check] compares it. None of that needs the
// register, and none of it withstands somebody who makes a whole new document:
// only the register (the SHA-256 of the file itself) or a signature does.
//
// # Signed documents
//
// A signature is added at the end of the PDF, so the unsigned document is the
// beginning of the signed one. The unsigned document is the same, byte for
// byte, for the same input; the signed one is not, because a signature holds
// the time of signing, and with elliptic curves a random number. So a signed
// document cannot be made again: it is signed while it is rendered, before the
// register stores its bytes, and a lost one is restored from there.
//
// The signature is a CMS signature of the whole file by ISO 32000-1, 12.8, with
// the signing certificate among the signed attributes, which is PAdES-CMS of
// ETSI EN 319 142-2. No time stamp of a third party and no revocation data are
// fetched: nothing is asked of the network while a number is being given.
package seal
