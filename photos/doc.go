// Package photos reads pictures that somebody hands in and makes small, upright,
// clean copies of them for print.
//
// A picture file is not trusted. It is opened only inside a folder given as an
// [os.Root], so no path, link or device leads elsewhere. Its kind is told from
// its first bytes, never from its name. Its header is read before its pixels, and
// a picture whose pixels would not fit the limits is refused unread. A decoder
// that panics gives an error like any other damaged file.
//
// JPEG, PNG, TIFF and WebP are read, 8 or 16 bits a channel, grey, palette, RGB,
// and CMYK in JPEG. The orientation noted by the camera (EXIF, all eight cases) is
// applied, what is transparent becomes white, and the result is a JPEG that holds
// pixels and nothing else: no place, no camera, no name. Of the notes in the file
// only the date taken is returned, as a value.
//
// Colour profiles are not applied: numbers are taken to be sRGB.
package photos
