// HTML writes the documents of a folder of stones as pages of HTML: what somebody
// would have printed by a browser. Text and tables are those of a draft, word for
// word; drawings are left out, which is in the browser's favour.
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"stonewrit/grading"
	"stonewrit/grading/stone"
	"stonewrit/report"
	"stonewrit/templates"
)

func main() {
	n := flag.Int("n", 10, "number of pages")
	flag.Parse()
	if err := run(flag.Arg(0), flag.Arg(1), *n); err != nil {
		fmt.Fprintln(os.Stderr, "html: error:", err)
		os.Exit(2)
	}
}

func run(from, to string, n int) error {
	tables, err := grading.Load()
	if err != nil {
		return err
	}
	wording, err := templates.Load(templates.Builtin())
	if err != nil {
		return err
	}
	src, err := os.ReadFile(filepath.Join(from, "bench.yaml"))
	if err != nil {
		return err
	}
	bench, _ := stone.ReadBench("bench.yaml", src, tables.Gems)
	files, err := filepath.Glob(filepath.Join(from, "ST-*.yaml"))
	if err != nil || len(files) < n {
		return fmt.Errorf("%s has %d stones (%v)", from, len(files), err)
	}
	if err := os.MkdirAll(to, 0o755); err != nil {
		return err
	}
	reader, today := stone.NewReader(tables.Gems), time.Now()
	for _, file := range files[:n] {
		if src, err = os.ReadFile(file); err != nil {
			return err
		}
		name := filepath.Base(file)
		s, _ := reader.Stone(name, src)
		doc, err := report.Compose(report.Input{
			Examined: tables.Examine(s, bench, today), Gems: tables.Gems, Wording: wording, Issued: today, Draft: true, StoneFile: src,
		})
		if err != nil {
			return fmt.Errorf("%s: %w", file, err)
		}
		if err := os.WriteFile(filepath.Join(to, name+".html"), page(doc), 0o644); err != nil {
			return err
		}
	}
	return nil
}
