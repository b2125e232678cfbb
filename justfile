# Thin wrappers: what each one does stands in `cargo xtask help`.

# build the page and serve it on this machine
serve *args:
    cargo xtask serve {{args}}

# everything the tests need, then every test
test *stages:
    cargo xtask test {{stages}}

# a folder any static host can serve
dist:
    cargo xtask dist

# times and sizes against their budgets
bench:
    cargo xtask bench
