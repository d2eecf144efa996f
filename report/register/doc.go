// Package register keeps the book of issued numbers: no number used twice,
// nothing issued that is not on file, every change on record.
//
// # Events and entries
//
// The book is a log of events that only grows. An event (issue, void) is a
// line of JSON that holds the SHA-256 of the event before it; its own hash is
// the SHA-256 of exactly the bytes that are stored, so that anybody can prove
// the chain with a SQL shell and sha256sum. An amendment is an issue that
// names the number it replaces. Entries are the view of that log by number,
// written in the same transaction and compared with the log by [Reader.Audit].
// A third table keeps the bytes of every PDF, so that a lost file comes back
// byte for byte.
//
// The chain shows a change in the middle. It cannot show that the newest
// events were cut off everywhere at once, or that the whole log was written
// anew: for that, note [Audit.Head] outside the register. Triggers refuse to
// change or delete events and stored PDFs, which stops slips, not intent.
//
// # Numbers
//
// A number is taken in the order of the year in which it is issued, in the
// practice's time zone. See [Number].
//
// # Why a kill at any instant is safe
//
// [Book.Issue] works in this order:
//
//  1. one transaction, exclusive among all writers: take the next number, call
//     render; append the event, the entry, the bytes of the PDF and a note that
//     its file is pending; write the PDF under a temporary name in the folder
//     and sync it; commit;
//  2. give the file its name (by a hard link, which never replaces a file that
//     is there) and sync the folder;
//  3. strike out the note.
//
// A failure or a kill before the commit leaves the number free and no file
// but, after a kill, a temporary one that [Book.Settle] or the next issue of
// that number removes. A kill after the commit leaves an entry in the state
// [Reserved]: the register holds the bytes, and Settle or issuing the same
// stone again puts the file in its place. The order commit, then name, is
// what keeps a file from bearing a number that is given again, and is why
// commits are synced to the disk together with their folder
// (synchronous=EXTRA) before the file gets its name.
//
// The write transaction stays open while render runs. Rendering takes some
// tens of milliseconds, issuing is done by few people, and in return a render
// that fails wastes no number and needs no clearing up. Other writers wait.
//
// # The file
//
// The SQLite file keeps a rollback journal, not a write-ahead log: at rest the
// register is one file that can be copied, it works on a network folder that
// locks properly, and reading it creates nothing beside it. It is made
// readable by its owner alone, as are the PDFs, since they name clients.
//
// # The server
//
// A firm with several offices and one series keeps the same tables in a schema
// of a PostgreSQL database. A writer locks the log for its transaction;
// readers do not wait. Each transaction asks for a commit that is synced to
// the server's disk, whatever the server's default is; a server with fsync off
// keeps no promise. A writer that falls silent, because its machine is off or
// the line is cut, is given up by the server after two minutes.
//
// If the line breaks while a commit is under way, the book looks whether it
// came about and goes on or clears up accordingly; only if the server stays
// away is the answer [ErrUncertain].
//
// Each office keeps the PDFs of the numbers it gives, and has a name of its own
// in the entries. An audit looks for those of one office in its folder; of the
// others it proves what the register stores.
//
// An entry whose file is pending says which machine took it. Another leaves it
// alone, since it may be between commit and name at this moment.
package register
