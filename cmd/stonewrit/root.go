package main

import (
	"embed"
	"errors"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

//go:embed help/*.txt
var helpTexts embed.FS

// root builds the tree of commands. args are those of this run, for the
// messages about a word that is no command.
func (p *program) root(args []string) *cobra.Command {
	root := &cobra.Command{
		Use: name, Version: version(), Args: cobra.ArbitraryArgs,
		SilenceErrors: true, SilenceUsage: true,
		FParseErrWhitelist: cobra.FParseErrWhitelist{UnknownFlags: true},
		CompletionOptions:  cobra.CompletionOptions{DisableDefaultCmd: true},
	}
	root.RunE = func(c *cobra.Command, words []string) error { return p.noCommand(c, args, words) }
	root.SetArgs(args)
	root.SetIn(p.stdin)
	root.SetOut(p.out)
	root.SetErr(p.stderr)
	root.SetVersionTemplate(name + " {{.Version}}\n")
	root.SetHelpFunc(p.help)
	root.SetFlagErrorFunc(flagError)
	root.AddCommand(
		p.startCommand(), p.newCommand(), p.checkCommand(), p.weighCommand(), p.nextCommand(), p.draftCommand(), p.issueCommand(), p.amendCommand(), p.verifyCommand(), p.registerCommand(), p.voidCommand(), p.inventoryCommand(), p.importCommand(), p.gemsCommand(), p.schemaCommand(), p.deskCommand(),
	)
	return root
}

// noCommand answers a command line that names no command.
func (p *program) noCommand(c *cobra.Command, args, words []string) error {
	if len(args) == 0 {
		p.met(statusFailed)
		_, err := p.stderr.Write([]byte(helpText(c)))
		return err
	}
	if len(words) == 0 || strings.HasPrefix(args[0], "-") {
		return failing("the command comes first: "+name+" check stone.yaml; "+name+" --help lists the commands", "no command is given, only %s", args[0])
	}
	return unknownWord("there is no command %q", words[0], commandNames(c), name+" --help lists the commands")
}

// unknownWord is the error for a word that is none of those known, with the
// nearest of them.
func unknownWord(format, word string, known []string, otherwise string) error {
	hint := otherwise
	if near := nearest(word, known); near != "" {
		hint = "did you mean " + near + "?"
	}
	return failing(hint, format, word)
}

// commandNames lists the commands below a command.
func commandNames(c *cobra.Command) []string {
	var names []string
	for _, sub := range c.Commands() {
		names = append(names, sub.Name())
	}
	return names
}

// flagError words what the flag parser found.
func flagError(c *cobra.Command, err error) error {
	otherwise := c.CommandPath() + " --help lists the flags"
	var unknown *pflag.NotExistError
	var needs *pflag.ValueRequiredError
	var invalid *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown):
		var known []string
		c.Flags().VisitAll(func(f *pflag.Flag) { known = append(known, f.Name) })
		flag := unknown.GetSpecifiedName()
		if unknown.GetSpecifiedShortnames() != "" {
			return failing(otherwise, "%s has no flag -%s", c.Name(), flag)
		}
		if near := nearest(flag, known); near != "" {
			otherwise = "did you mean --" + near + "?"
		}
		return failing(otherwise, "%s has no flag --%s", c.Name(), flag)
	case errors.As(err, &needs):
		return failing(otherwise, "the flag --%s needs a value", needs.GetFlag().Name)
	case errors.As(err, &invalid):
		return failing(otherwise, "--%s %s: %v", invalid.GetFlag().Name, invalid.GetValue(), invalid.Unwrap())
	}
	return failing(otherwise, "%v", err)
}

// help prints the text of a command. Each text is set by hand.
func (p *program) help(c *cobra.Command, _ []string) { p.print("%s", helpText(c)) }

// helpText is the text of help/NAME.txt, or the general one.
func helpText(c *cobra.Command) string {
	name := strings.ReplaceAll(c.CommandPath(), " ", "-")
	if text, err := helpTexts.ReadFile("help/" + name + ".txt"); err == nil {
		return string(text)
	}
	text, _ := helpTexts.ReadFile("help/" + c.Root().Name() + ".txt")
	return string(text)
}

// version is that of the module, with the state of the source it was built
// from.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "(unknown)"
	}
	v := info.Main.Version
	if v == "" || v == "(devel)" {
		v = "devel"
	}
	return v
}
