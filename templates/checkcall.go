package templates

import (
	"reflect"
	"text/template/parse"
)

// argument is an operand of a call with its type, nil where it is unknown.
type argument struct {
	typ  reflect.Type
	node parse.Node
}

// call is the type that a function gives.
func (c *checker) call(f *parse.IdentifierNode, args []argument) reflect.Type {
	if own, ok := c.own[f.Ident]; ok {
		return c.callOwn(f, reflect.TypeOf(own), args)
	}
	switch f.Ident {
	case "and", "or":
		return common(args)
	case "not":
		c.count(f, args, 1)
		return reflect.TypeFor[bool]()
	case "eq", "ne", "lt", "le", "gt", "ge":
		if len(args) < 2 {
			c.fail(f, "%s compares two", f.Ident)
		}
		for _, a := range args[min(1, len(args)):] {
			if a.typ != nil && args[0].typ != nil && a.typ.Kind() != args[0].typ.Kind() {
				c.fail(f, "%s cannot compare %s with %s", f.Ident, kindOf(args[0].typ), kindOf(a.typ))
			}
		}
		return reflect.TypeFor[bool]()
	case "len":
		c.count(f, args, 1)
		if len(args) == 1 && args[0].typ != nil && args[0].typ.Kind() != reflect.Slice && args[0].typ.Kind() != reflect.String {
			c.fail(f, "len needs a list or a text, not %s", kindOf(args[0].typ))
		}
		return reflect.TypeFor[int]()
	case "print", "printf", "println":
		return reflect.TypeFor[string]()
	}
	c.fail(f, "the function %s is not for sentences", f.Ident)
	return nil
}

func (c *checker) count(f *parse.IdentifierNode, args []argument, want int) bool {
	if len(args) == want {
		return true
	}
	c.fail(f, "%s takes %d, not %d", f.Ident, want, len(args))
	return false
}

// callOwn checks a call of one of the functions of this package.
func (c *checker) callOwn(f *parse.IdentifierNode, t reflect.Type, args []argument) reflect.Type {
	if c.count(f, args, t.NumIn()) {
		for i, a := range args {
			if a.typ != nil && !pointed(a.typ).AssignableTo(t.In(i)) {
				c.fail(f, "%s takes %s, not %s", f.Ident, kindOf(t.In(i)), kindOf(a.typ))
			}
		}
	}
	return t.Out(0)
}

// common is the one type of all operands, or nil.
func common(args []argument) reflect.Type {
	var t reflect.Type
	for i, a := range args {
		if i > 0 && a.typ != t {
			return nil
		}
		t = a.typ
	}
	return t
}
