package register

import "context"

// A store is a database that holds one book. The statements are the same for
// every store (see tx); a store says how transactions begin, who waits for
// whom, and what its errors mean.
type store interface {
	// write runs f in a transaction that overlaps no other writer's, on this
	// machine or another, and commits it durably before it returns nil. If f
	// or the commit fails, nothing of it stays.
	write(ctx context.Context, f func(*tx) error) error
	// read runs f on a state of the book that does not change meanwhile.
	read(ctx context.Context, f func(*tx) error) error
	// check runs the database's own test of its consistency and returns what
	// that found.
	check(ctx context.Context) ([]string, error)
	close() error
}
