// Package yamledit changes single values of a YAML file in place. Everything
// else of the file stays as it is, byte for byte: comments, blank lines, order,
// quotes and the way lists are broken.
//
// A change is found by the nodes of the file, made in its text, and then proved:
// the text is parsed again and must hold exactly the tree that the change was to
// give. What cannot be changed so is refused with [ErrShape], and the file is
// left as it was.
package yamledit
