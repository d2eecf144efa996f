package gem

import (
	"testing"

	"github.com/agnivade/levenshtein"
	"pgregory.net/rapid"
)

// Counted by hand, letter by letter.
func TestDistance(t *testing.T) {
	tests := []struct {
		a, b string
		want int
		why  string
	}{
		{"", "", 0, "nothing and nothing"},
		{"", "ruby", 4, "four letters are wanting"},
		{"topaz", "topaz", 0, "the same"},
		{"toapz", "topaz", 1, "two neighbours changed places"},
		{"otpaz", "topaz", 1, "the first two"},
		{"topza", "topaz", 1, "the last two"},
		{"zircno", "zircon", 1, "two neighbours changed places"},
		{"rubby", "ruby", 1, "one letter too many"},
		{"ruy", "ruby", 1, "one too few"},
		{"rudy", "ruby", 1, "a wrong one"},
		{"abcd", "badc", 2, "two pairs changed places"},
	}
	for _, tt := range tests {
		if got := distance(tt.a, tt.b, 9); got != tt.want {
			t.Errorf("%q and %q: got %d, want %d: %s", tt.a, tt.b, got, tt.want, tt.why)
		}
	}
}

// An exchange of neighbours is two slips to Levenshtein and one here, so the
// distance lies between his and half of his, as another library counts it.
func TestDistanceBesideLevenshtein(t *testing.T) {
	word := rapid.StringMatching(`[a-e]{0,8}`)
	rapid.Check(t, func(t *rapid.T) {
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		got, plain := distance(a, b, 9), levenshtein.ComputeDistance(a, b)
		if got > plain || 2*got < plain || got != distance(b, a, 9) {
			t.Errorf("%q and %q: got %d, there and back %d, Levenshtein %d", a, b, got, distance(b, a, 9), plain)
		}
	})
}

// Giving up early must not lose a word that is near enough.
func TestNearnessGivesUpOnlyBeyond(t *testing.T) {
	word := rapid.StringMatching(`[a-d]{0,12}`)
	rapid.Check(t, func(t *rapid.T) {
		a, b := word.Draw(t, "a"), word.Draw(t, "b")
		whole := distance(a, b, 99)
		if got, ok := nearness(a, b); ok != (3*whole <= len(b)) || ok && got != whole {
			t.Errorf("%q and %q: got %d, %v; counted to the end %d", a, b, got, ok, whole)
		}
	})
}
