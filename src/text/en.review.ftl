# Sentences on checking what people found: what verifiers see and choose, and what finders hear.

# The picture of a measured length against the lengths of kinds.
lengths-measured = Measured: { $mm } mm ± { $plusMinus }.
lengths-least = Measured: at least { $mm } mm.
lengths-none = no length is published
lengths-kind = { $name }: { $low } to { $high } mm.
lengths-kind-none = { $name }: no length is published.
