package main

import (
	"context"
	"errors"
	"net"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"time"

	"github.com/spf13/cobra"

	"stonewrit/cmd/stonewrit/desk"
)

// deskOptions are the flags of desk.
type deskOptions struct {
	listen   string
	language string
	noOpen   bool
}

// deskCommand serves a folder as a local page.
func (p *program) deskCommand() *cobra.Command {
	var o deskOptions
	c := &cobra.Command{
		Use: "desk",
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return failing("the desk serves one folder with all below it", "desk takes one folder, %q is one too many", args[1])
			}
			return nil
		},
		RunE: func(c *cobra.Command, args []string) error {
			return p.serveDesk(c.Context(), append(args, ".")[0], o)
		},
	}
	c.Flags().StringVar(&o.listen, "listen", "127.0.0.1:0", "")
	c.Flags().StringVar(&o.language, "language", "", "")
	c.Flags().BoolVar(&o.noOpen, "no-open", false, "")
	return c
}

// serveDesk serves a folder until the program is told to end.
func (p *program) serveDesk(ctx context.Context, dir string, o deskOptions) error {
	dir, err := filepath.Abs(dir)
	if err != nil {
		return err
	}
	if err := spoken(o.language); err != nil {
		return err
	}
	listener, err := net.Listen("tcp", o.listen)
	if err != nil {
		return failing("as host:port, for example 127.0.0.1:8080", "--listen %s: %v", o.listen, err)
	}
	d, err := p.newDesk(dir, o.language, hostsOf(listener.Addr()))
	if err != nil {
		return errors.Join(err, listener.Close())
	}
	defer d.Close()
	address := "http://" + listener.Addr().String() + d.EntryPath()
	p.print("%s\n", address)
	if !isLoopback(listener.Addr()) {
		p.note("the desk listens beyond this computer, unencrypted: whoever has the address can read and change the files")
	}
	p.note("the desk is open; Ctrl-C ends it")
	if !o.noOpen {
		p.openBrowser(address)
	}
	return serve(ctx, listener, d.Handler())
}

// spoken refuses a language that the desk does not speak.
func spoken(code string) error {
	var codes []string
	for _, t := range desk.Tongues() {
		codes = append(codes, t.Code)
	}
	if code == "" || slices.Contains(codes, code) {
		return nil
	}
	return unknownWord("--language %s is no language of the desk", code, codes, listed(codes))
}

// newDesk opens a folder for the desk.
func (p *program) newDesk(dir, language string, hosts []string) (*desk.Desk, error) {
	tables, err := p.tables()
	if err != nil {
		return nil, err
	}
	o := desk.Options{Folder: dir, Tables: tables, Office: newDeskOffice(p, dir), Now: p.now, Hosts: hosts, Language: language, Random: p.rand}
	if o.OuterName, o.Outer, err = benchAbove(dir); err != nil {
		return nil, err
	}
	return desk.New(o)
}

// benchAbove reads the bench file that counts where the folder has none of its
// own; nil if there is none.
func benchAbove(dir string) (file string, src []byte, err error) {
	for parent := filepath.Dir(dir); parent != dir; dir, parent = parent, filepath.Dir(parent) {
		file = filepath.Join(parent, benchName)
		info, err := os.Stat(file)
		if err != nil || !info.Mode().IsRegular() {
			continue
		}
		f, err := os.Open(file)
		if err != nil {
			return "", nil, err
		}
		src, err = slurp(f)
		return file, src, err
	}
	return "", nil, nil
}

// hostsOf are the names under which the desk answers.
func hostsOf(addr net.Addr) []string {
	host, port, err := net.SplitHostPort(addr.String())
	if err != nil {
		return []string{addr.String()}
	}
	hosts := []string{net.JoinHostPort(host, port)}
	if isLoopback(addr) {
		hosts = append(hosts, net.JoinHostPort("localhost", port))
	}
	return hosts
}

func isLoopback(addr net.Addr) bool {
	tcp, ok := addr.(*net.TCPAddr)
	return ok && tcp.IP.IsLoopback()
}

// serve answers until ctx ends; then requests under way are let finish.
func serve(ctx context.Context, listener net.Listener, handler http.Handler) error {
	server := &http.Server{Handler: handler, ReadHeaderTimeout: 10 * time.Second, ReadTimeout: 2 * time.Minute, IdleTimeout: 2 * time.Minute, MaxHeaderBytes: 64 << 10}
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(listener) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	last, stop := context.WithTimeout(context.Background(), 5*time.Second)
	defer stop()
	return server.Shutdown(last)
}

// openBrowser opens an address in the browser of the user, if that can be done.
func (p *program) openBrowser(address string) {
	words := []string{"xdg-open", address}
	switch runtime.GOOS {
	case "darwin":
		words = []string{"open", address}
	case "windows":
		words = []string{"rundll32", "url.dll,FileProtocolHandler", address}
	}
	if err := exec.Command(words[0], words[1:]...).Start(); err != nil {
		p.note("no browser could be opened: open the address above")
	}
}
