package register

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"net"
	"net/url"

	"github.com/jackc/pgx/v5/pgconn"
	"github.com/jackc/pgx/v5/stdlib"
)

// explain gives an error of a transaction its meaning for the user. Errors that
// are not the database's stay as they are. conn may be nil.
func (s *postgresStore) explain(ctx context.Context, conn *sql.Conn, err error) error {
	if err == nil {
		return nil
	}
	var server *pgconn.PgError
	var connect *pgconn.ConnectError
	fromServer, unconnected := errors.As(err, &server), errors.As(err, &connect)
	switch {
	case ctx.Err() != nil: // the libraries word it in several ways
		return fmt.Errorf("%s: %w", s.name, context.Cause(ctx))
	case fromServer && server.Code[:2] != "08" && server.Code[:2] != "57":
		return fmt.Errorf("%s: %w", s.name, meaning(server))
	case fromServer:
		return fmt.Errorf("%s: %w: %s", s.name, ErrLost, server.Message)
	case unconnected:
		return fmt.Errorf("%s: %w", s.name, &caused{ErrLost, briefly(connect)})
	case closed(conn):
		return fmt.Errorf("%s: %w", s.name, &caused{ErrLost, err})
	}
	return err
}

// meaning words what the server says. The codes are those of PostgreSQL's
// manual, appendix A.
func meaning(e *pgconn.PgError) error {
	switch e.Code {
	case "55P03": // lock_not_available
		return ErrBusy
	case "53300": // too_many_connections
		return fmt.Errorf("%w: the server has no connection left", ErrBusy)
	case "53100": // disk_full
		return fmt.Errorf("%w: the disk of the server is full: %s", ErrWrite, e.Message)
	case "25006": // read_only_sql_transaction
		return fmt.Errorf("%w: the server is a read-only copy", ErrWrite)
	case "42501": // insufficient_privilege
		return fmt.Errorf("the register may not be used: %s", e.Message)
	case "28000", "28P01", "3D000": // authorization, password, database
		return fmt.Errorf("the server does not let this user in: %s", e.Message)
	case "42P01", "42703", "XX001", "XX002": // no such table, column; damaged data, index
		return fmt.Errorf("%w: %s", ErrNotRegister, e.Message)
	}
	return fmt.Errorf("%s (SQLSTATE %s)", e.Message, e.Code)
}

// closed reports whether a connection broke.
func closed(conn *sql.Conn) bool {
	if conn == nil {
		return false
	}
	broken := false
	err := conn.Raw(func(driver any) error {
		broken = driver.(*stdlib.Conn).Conn().IsClosed()
		return nil
	})
	return broken || errors.Is(err, sql.ErrConnDone)
}

// briefly is why a server could not be reached, without the list of all that
// was tried.
func briefly(err error) error {
	var dial *net.OpError
	switch {
	case errors.As(err, &dial):
		return dial
	case pgconn.Timeout(err):
		return errors.New("timeout: no answer")
	}
	return err
}

// shownAddress is an address without password and settings, for messages.
func shownAddress(address string) string {
	u, err := url.Parse(address)
	if err != nil {
		return "the register's server"
	}
	u.RawQuery = ""
	if u.User != nil {
		u.User = url.User(u.User.Username())
	}
	return u.String()
}
