package desk

import (
	"bytes"
	"embed"
	"fmt"

	"gopkg.in/yaml.v3"
)

//go:embed help/en.yaml
var helpFiles embed.FS

// testHelp is what to know of a test.
type testHelp struct {
	Shows    string   `yaml:"shows"`    // what it tells
	Well     []string `yaml:"well"`     // how it is done well
	Misleads []string `yaml:"misleads"` // how it misleads
}

// loadHelp reads what there is to know of the tests. An unknown key is an error.
func loadHelp() (map[string]testHelp, error) {
	const name = "help/en.yaml"
	src, err := helpFiles.ReadFile(name)
	if err != nil {
		return nil, err
	}
	dec := yaml.NewDecoder(bytes.NewReader(src))
	dec.KnownFields(true)
	tests := map[string]testHelp{}
	if err := dec.Decode(&tests); err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return tests, nil
}
