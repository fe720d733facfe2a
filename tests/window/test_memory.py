import subprocess
import sys

import pytest


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="the C library is asked on Linux only")
def test_the_c_library_takes_the_settings():
    code = "from fitcalc.window.memory import give_back; print(give_back())"
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout == "True\n"
