package main

import (
	"bufio"
	"io"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// everyCommand lists the commands of the program, those below others included.
func everyCommand() []*cobra.Command {
	p := &program{out: bufio.NewWriter(io.Discard)}
	var list []*cobra.Command
	var add func(*cobra.Command)
	add = func(c *cobra.Command) {
		list = append(list, c)
		for _, sub := range c.Commands() {
			if sub.Name() != "help" {
				add(sub)
			}
		}
	}
	add(p.root(nil))
	return list
}

var flagWord = regexp.MustCompile(`--([a-z][a-z-]+)`)

// Each command has a help text of its own, which names its flags and no
// others, gives an example, and fits a terminal.
func TestHelpTexts(t *testing.T) {
	all := everyCommand()
	if len(all) < 5 {
		t.Fatalf("only %d commands", len(all))
	}
	general := helpText(all[0])
	for _, c := range all {
		text := helpText(c)
		if c.HasParent() && text == general {
			t.Errorf("%s has no help text of its own", c.CommandPath())
			continue
		}
		if !strings.HasPrefix(text, c.CommandPath()+" ") {
			t.Errorf("%s: the help begins with %q", c.CommandPath(), strings.SplitN(text, "\n", 2)[0])
		}
		if !strings.Contains(text, "\nExample:\n    "+name+" ") {
			t.Errorf("%s: the help has no example", c.CommandPath())
		}
		for i, line := range strings.Split(text, "\n") {
			if utf8.RuneCountInString(line) > lineWidth {
				t.Errorf("%s: line %d of the help is %d wide", c.CommandPath(), i+1, utf8.RuneCountInString(line))
			}
		}
		checkFlags(t, c, text)
		if c.HasParent() && c.Parent() == all[0] && !strings.Contains(general, "    "+name+" "+c.Name()+" ") {
			t.Errorf("the general help does not name %s", c.Name())
		}
	}
}

func checkFlags(t *testing.T, c *cobra.Command, text string) {
	t.Helper()
	named := map[string]bool{"help": true, "version": true}
	for _, g := range flagWord.FindAllStringSubmatch(text, -1) {
		named[g[1]] = true
	}
	c.LocalFlags().VisitAll(func(f *pflag.Flag) {
		if !named[f.Name] {
			t.Errorf("%s: the help does not name --%s", c.CommandPath(), f.Name)
		}
	})
	for flag := range named {
		if c.HasParent() && flag != "help" && flag != "version" && c.Flag(flag) == nil {
			t.Errorf("%s: the help names --%s, which is no flag", c.CommandPath(), flag)
		}
	}
}
