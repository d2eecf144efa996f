// Package seal closes a finished PDF and opens it again: the code that is
// printed at its end, the signature with the practice's own certificate, the
// password of a copy, and reading what a document holds to see whether its
// parts belong together.
//
// # What a document says of itself
//
// The XMP metadata hold number, UUID, and the SHA-256 of the two files that
// travel inside: the stone file as examined and the JSON of the examined
// stone; of a piece, those of the files of its stones as well; and that of what
// the pages show. Number and UUID stand in print too, and so does the digest of the
// stone file; the code carries the number and the digest of the JSON. [Open]
// reads all of it, [Document.Check] compares it. None of that needs the
// register, and none of it withstands somebody who makes a whole new document:
// only the register (the SHA-256 of the file itself) or a signature does.
//
// # Signed documents
//
// A signature is added at the end of the PDF, so the unsigned document is the
// beginning of the signed one. The unsigned document is the same, byte for
// byte, for the same input; so is one signed with an RSA key, but not one signed
// with elliptic curves, whose signatures hold a random number. So a signed
// document cannot be made again: it is signed while it is rendered, before the
// register stores its bytes, and a lost one is restored from there.
//
// The signature is a PAdES baseline signature of level B-B, ETSI EN 319 142-1:
// its SubFilter is ETSI.CAdES.detached, it covers the whole file but itself, the
// time of signing stands beside it (M), and its signed attributes are the
// content type, the digest, and the certificate that it was made for
// (signing-certificate-v2). It certifies the document, with no change allowed
// afterwards (DocMDP). The certificates up to the issuer travel in it as far as
// the key file holds them.
//
// It has no time stamp of a third party (level B-T) and no revocation data (B-LT):
// both are fetched from services, and nothing is asked of the network while a
// number is being given. So the time is by the clock of the practice, and
// whether the certificate was revoked since is for the reader to find out. That
// its issuer can be trusted is not judged here either.
package seal
