package main

import (
	"slices"
	"testing"
)

func TestChanges(t *testing.T) {
	const file = `stone: HL-1
weight: {measured: 1.520 ct, instrument: balance-1}
client: {name: "A. Client"}
opinion: {species: corundum, treatments: [heated]}
tests:
  - {test: refractometer, readings: [[1.762, 1.770]]}
  - test: magnification
    sees: [silk]
`
	for _, row := range []struct {
		name, now string
		want      []string
	}{
		{"nothing", file, nil},
		{"comments, quotes, order of keys", `# seen again
client:
    name: A. Client
stone: "HL-1"
opinion: {treatments: [heated], species: corundum}
weight:
  instrument: balance-1 # the small one
  measured: 1.520 ct
tests:
  - {test: refractometer, readings: [[1.762, 1.770]]}
  - {test: magnification, sees: [silk]}
`, nil},
		{"a value", `stone: HL-1
weight: {measured: 1.530 ct, instrument: balance-1}
client: {name: "A. Client"}
opinion: {species: corundum, treatments: [heated]}
tests:
  - {test: refractometer, readings: [[1.762, 1.770]]}
  - {test: magnification, sees: [silk]}
`, []string{"weight, measured: 1.530 ct, was 1.520 ct"}},
		{"a field more, one less, a list", `stone: HL-1
weight: {measured: 1.520 ct}
mounted: false
client: {name: "A. Client"}
opinion: {species: corundum, treatments: [heated, oiled]}
tests:
  - {test: refractometer, readings: [[1.762, 1.770]]}
  - {test: magnification, sees: [silk]}
`, []string{"weight, instrument: left out, was balance-1", "mounted: false, not given before", "opinion, treatments: [heated, oiled], was [heated]"}},
		{"a test put in before the others, one changed", `stone: HL-1
weight: {measured: 1.520 ct, instrument: balance-1}
client: {name: "A. Client"}
opinion: {species: corundum, treatments: [heated]}
tests:
  - {test: polariscope, reaction: blinks}
  - {test: refractometer, readings: [[1.762, 1.770]]}
  - {test: magnification, sees: [silk, fingerprint]}
`, []string{"tests, polariscope: reaction blinks, test polariscope, not given before", "tests, magnification, sees: [silk, fingerprint], was [silk]"}},
		{"a test taken out", `stone: HL-1
weight: {measured: 1.520 ct, instrument: balance-1}
client: {name: "A. Client"}
opinion: {species: corundum, treatments: [heated]}
tests:
  - {test: magnification, sees: [silk]}
`, []string{"tests, refractometer: left out, was readings [[1.762, 1.770]], test refractometer"}},
		{"tests in another order", `stone: HL-1
weight: {measured: 1.520 ct, instrument: balance-1}
client: {name: "A. Client"}
opinion: {species: corundum, treatments: [heated]}
tests:
  - {test: magnification, sees: [silk]}
  - {test: refractometer, readings: [[1.762, 1.770]]}
`, []string{"tests, in another order"}},
	} {
		list, err := changesOf([]byte(file), []byte(row.now))
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, c := range list {
			got = append(got, c.String())
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%s: got %q, want %q", row.name, got, row.want)
		}
	}
}
