"""Valid files with one to eight flipped bits: each loads or is refused with one sentence, within 2 s.

PYTHONPATH=. nice python tests/reliability/flip_bits.py [files]
"""

from damage import main


def flipped(chance, content):
    """The bytes with one bit in two of three files flipped, up to eight in the others."""
    found = bytearray(content)
    for _ in range(chance.choice((1, 1, chance.randint(2, 8)))):
        found[chance.randrange(len(found))] ^= 1 << chance.randrange(8)
    return bytes(found)


if __name__ == "__main__":
    main(flipped, 10_000)
