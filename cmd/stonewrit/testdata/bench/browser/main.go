// Browser prints pages of HTML to PDF with one headless browser that stays open,
// two tabs at a time: the fastest that a browser can be used.
package main

import (
	"context"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"golang.org/x/sync/errgroup"
)

func main() {
	path := flag.String("browser", "chromium", "the browser")
	flag.Parse()
	if err := run(*path, flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, "browser: error:", err)
		os.Exit(2)
	}
}

func run(path string, files []string) error {
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox)
	ctx, stop := chromedp.NewExecAllocator(context.Background(), options...)
	defer stop()
	ctx, stop = chromedp.NewContext(ctx)
	defer stop()
	if err := chromedp.Do(ctx, chromedp.Navigate("about:blank")); err != nil {
		return err
	}
	var tabs errgroup.Group
	work := make(chan string)
	for range 2 {
		tabs.Go(func() error {
			tab, stop := chromedp.NewContext(ctx)
			defer stop()
			for file := range work {
				if err := printed(tab, file); err != nil {
					return err
				}
			}
			return nil
		})
	}
	for _, file := range files {
		work <- file
	}
	close(work)
	return tabs.Wait()
}

func printed(tab context.Context, file string) error {
	full, err := filepath.Abs(file)
	if err != nil {
		return err
	}
	if err := chromedp.Do(tab, chromedp.Navigate("file://"+full)); err != nil {
		return err
	}
	paper := true
	out, err := chromedp.Call(tab, page.PrintToPDF, page.PrintToPDFParams{PreferCSSPageSize: &paper})
	if err != nil {
		return err
	}
	return os.WriteFile(strings.TrimSuffix(full, ".html")+".pdf", out.Data, 0o600)
}
