// Package desk is the local web page over a working folder: the same files, the
// same rules and nothing kept elsewhere. It lists the stones, shows each with a
// form that follows the bench, judges readings while they are entered, and
// writes single values into the files so that remarks and order stay.
//
// The page is for one person at one computer. It answers only under the names of
// the loopback address, only to a browser that was opened with the token of this
// start, and writes only what comes from its own forms. Every path is opened
// inside the folder. A file is replaced as a whole or not at all, and only if it
// still is the one that the form was made from.
//
// What a document or a number is, the desk does not know: it asks an [Office].
package desk
